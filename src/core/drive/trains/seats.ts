import type { Stages } from './written';

/** A wheel on a shaft, in the plane of its stage. Shaft 0 is the first, the highest is the leadscrew. */
export interface Seat {
  readonly shaft: number;
  readonly stage: number;
  readonly teeth: number;
}

export const seatsOf = (stages: Stages): Seat[] => {
  const seats: Seat[] = [];
  let shaft = 0;
  stages.forEach((chain, stage) => {
    chain.forEach((teeth, i) => seats.push({ shaft: shaft + i, stage, teeth }));
    shaft += chain.length - 1;
  });
  return seats;
};

/** Meshes from first shaft to leadscrew; each turns the sense round. */
export const meshes = (stages: Stages): number => stages.reduce((n, s) => n + s.length - 1, 0);

/** Tooth sums of the meshes in order. */
export const sums = (stages: Stages): number[] =>
  stages.flatMap((chain) => chain.slice(1).map((z, i) => z + (chain[i] ?? 0)));
