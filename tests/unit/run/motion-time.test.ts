// Times of a head against closed forms.
import { describe, expect, it } from 'vitest';
import { motionTime, stretchTime } from '../../../src/run/motion-time.js';

describe('stretchTime', () => {
  it('is length over speed and one speeding up, where the speed is reached', () => {
    // 100 mm/s at 1000 mm/s²: 5 mm to speed up, 5 mm to slow down, 0.1 s each; 90 mm at speed take 0.9 s.
    expect(stretchTime(100, 100, 1000)).toBeCloseTo(1.1, 12);
  });

  it('is a triangle where the head must slow down before', () => {
    // 2.5 mm up, 2.5 mm down, s = a t² / 2.
    expect(stretchTime(5, 100, 1000)).toBeCloseTo(2 * Math.sqrt(2 * 2.5 * 1e-3), 12);
  });

  it('has no step between the two', () => {
    const edge = (100 * 100) / 1000;
    expect(stretchTime(edge, 100, 1000)).toBeCloseTo(0.2, 12);
    expect(stretchTime(edge - 1e-9, 100, 1000)).toBeCloseTo(0.2, 9);
  });

  it('is the same as summing small steps of time', () => {
    for (const [length, speed, acceleration] of [
      [37, 80, 450],
      [3, 80, 450],
      [0.4, 80, 450],
    ] as const) {
      let [way, velocity, time] = [0, 0, 0];
      const dt = 1e-5;
      while (way < length) {
        const brake = (velocity * velocity) / (2 * acceleration);
        velocity =
          length - way <= brake
            ? Math.max(velocity - acceleration * dt, 1e-3)
            : Math.min(velocity + acceleration * dt, speed);
        way += velocity * dt;
        time += dt;
      }
      expect(stretchTime(length, speed, acceleration)).toBeCloseTo(time, 2);
    }
  });
});

describe('motionTime', () => {
  it('adds stretches, ways and lifts', () => {
    const motion = { speedMmS: 100, travelMmS: 200, accelerationMmS2: 1000, liftS: 0.25 };
    const time = motionTime({ stretchesMm: [100, 5], travelsMm: [200, 10], lifts: 3 }, motion);
    expect(time).toBeCloseTo(1.1 + Math.sqrt(0.02) + 1.2 + 0.2 + 0.75, 12);
  });
});
