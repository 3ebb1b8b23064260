/** Pages under Speed: they come together, after the first paint. */
import './feed';
import './trace';
import './raise';
import './chart';
