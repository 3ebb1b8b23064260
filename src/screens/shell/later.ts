/** Parts of the frame that the first paint can do without. */
import './first';
import './notices';
import './undo';
import './why';
import './wipe';
