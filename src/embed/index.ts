/** The elements for other pages: importing this defines them. They keep nothing, and ask nothing of any network. */
export { EmbedChartEvent, LsEmbedChart, type EmbedChartRow } from './chart';
export { EmbedAnswerEvent, LsEmbedChecks } from './checks';
export { EmbedVerdictEvent, LsEmbedGauge } from './gauge';
export { EmbedChooseEvent, LsEmbedLookUp } from './look-up';
export type { EmbedMachine } from './machine';
export type { EmbedThread } from './thread';
export { useMark, useTrade } from './words';
