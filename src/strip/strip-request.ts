// What a test strip is asked to try, and what a drawing for the road is made of.
import type { Role } from '../model/pass.js';

/** What is stepped: pressure in gf, offset of the knife in mm, speed in cm/s. */
export type SteppedSetting = 'pressure' | 'offset' | 'speed';

/** A strip that tries values of one setting, one after the other. */
export interface StripRequest {
  /** A role that moves a tool along lines. */
  readonly role: Role;
  readonly setting: SteppedSetting;
  /** First value, in the unit of the setting. */
  readonly from: number;
  /** Last value; may be the smaller. */
  readonly to: number;
  /** How many values, both ends among them. */
  readonly steps: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** One value and where it is tried. */
export interface StripStep {
  /** From 1; the tool draws as many short lines. */
  readonly number: number;
  /** In the unit of the setting. */
  readonly value: number;
  /** Name of its pass. */
  readonly pass: string;
  /** Top left of its field, mm from the sheet's. */
  readonly xMm: number;
  readonly yMm: number;
}

/** A drawing of pinbar's own on its way to `split`, with the ticket that goes with it. */
export interface OwnDrawing {
  readonly svg: string;
  /** As a ticket is written; `readTicket` takes it. */
  readonly ticket: Readonly<Record<string, unknown>>;
}

/** The unit of each setting, as it is written and as it stands in names. */
export const SETTING_UNITS: Readonly<Record<SteppedSetting, { readonly sign: string; readonly name: string }>> = {
  pressure: { sign: 'gf', name: 'gf' },
  offset: { sign: 'mm', name: 'mm' },
  speed: { sign: 'cm/s', name: 'cm-per-s' },
};
