export { COMMISSIONING, STOP_TESTS, TEST_IDS } from '../context';
export type { CommissioningId, StopTestId, TestId } from '../context';
