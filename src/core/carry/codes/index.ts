export { NOTHING_COLLECTED, take, type Collected, type Taken } from './collect';
export { drawingOf, QUIET, type CodeDrawing } from './drawing';
export { MOST, shownFor, split, type Split } from './split';
export { BLOCK, MOST_BLOCKS, type FrameRefusal } from './frame';
