export type { FormId, Thread } from './thread';
export { FAMILIES, catalogue, familyById, threadById, threadsOf, type Family } from './catalogue';
export { blank, type Blank } from './blank';
export { classesOf } from './classes';
export { basicSizes, formOf, unitOf } from './forms';
export { limits, type LimitRefusal, type LimitsResult } from './limits';
export { infeedDepth, type InfeedRefusal, type Nose } from './depth';
export { tappingDrill } from './tapping';
export {
  blankOwn,
  OWN,
  ownId,
  ownKey,
  OWN_PROFILES,
  ownTrouble,
  threadOfOwn,
  type OwnProfile,
  type OwnThread,
  type OwnTrouble,
} from './own';
export { ownDesignation } from './own-name';
