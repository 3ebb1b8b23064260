/** Pages under a thread: they come together, after the first paint. */
import './limits';
import './measure';
import './identify';
import './held';
import './own';
import './trains';
