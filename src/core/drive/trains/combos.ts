import type { WheelSet } from './written';

/** Some wheels of a set, and their product: a whole number below 2⁵³ for three wheels of 200 teeth. */
export interface Combo {
  readonly teeth: readonly number[];
  readonly product: number;
}

/** Every choice of so many wheels from a set, wheels of equal teeth not told apart, by rising product. */
export const productsOf = (wheels: WheelSet, size: number): Combo[] => {
  const all: Combo[] = [];
  const pick = (from: number, teeth: readonly number[], product: number): void => {
    if (teeth.length === size) {
      all.push({ teeth, product });
      return;
    }
    for (let i = from; i < wheels.length; i += 1) {
      const z = wheels[i] as number;
      if (i > from && wheels[i - 1] === z) continue;
      pick(i + 1, [...teeth, z], product * z);
    }
  };
  pick(0, [], 1);
  return all.sort((a, b) => a.product - b.product);
};
