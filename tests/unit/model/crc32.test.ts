// The check sum of gzip and zip.
import { describe, expect, it } from 'vitest';
import { createCrc32 } from '../../../src/model/crc32.js';
import { encodeUtf8 } from '../../../src/model/platform.js';

describe('createCrc32', () => {
  it('sums up bytes in pieces', () => {
    const crc32 = createCrc32();
    // The check value of the CRC catalogue: "123456789" gives cbf43926.
    expect(crc32([encodeUtf8('12345'), encodeUtf8('6789')])).toBe(0xcbf43926);
    expect(crc32([encodeUtf8('123456789')])).toBe(0xcbf43926);
    expect(crc32([])).toBe(0);
  });
});
