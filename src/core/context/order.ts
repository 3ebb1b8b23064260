/** Something that was recorded, at a time by the phone's clock. */
export interface Recorded {
  readonly at: number;
  /** Its place among all that was recorded of this machine, which a clock set back or forward doesn't change. */
  readonly order?: number;
}

/** Whether `a` was recorded after `b`; by the clock where nothing else is known. */
export const isAfter = (a: Recorded, b: Recorded): boolean =>
  a.order === undefined || b.order === undefined ? a.at > b.at : a.order > b.order;
