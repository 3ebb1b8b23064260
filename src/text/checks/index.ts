export type { ItemText, ReadingText } from './item-text';
export { checkText, checkTexts } from './items';
export * from './states';
export { boundsText, inUnit } from './bounds';
export { checksText } from './screen';
