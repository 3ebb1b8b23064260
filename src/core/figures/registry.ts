import type { Inputs } from '../context';
import { sheetOf, type Registry, type Sheet } from './define';
import { FIRST } from './first';
import { REST } from './rest';

/**
 * Every figure there is. To add one: give it a type in ids.ts, define it, and name it in first.ts if Speed shows it, else
 * in rest.ts; the compiler asks for whatever is forgotten.
 */
export const REGISTRY = { ...FIRST, ...REST } as const satisfies Registry;

/** The figures for one machine, job and context; each is reckoned when first asked. */
export const figuresFor = (inputs: Inputs): Sheet => sheetOf(REGISTRY, inputs);
