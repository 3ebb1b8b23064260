/** Find a fault: what was read, what may be wrong, what to test next. */
import './faults';
