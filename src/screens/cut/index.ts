/** Pages of Cut: they come together, after the first paint. */
import './cut';
import './work';
import './stop';
import './nut';
import './plan';
import './pass';
import './measure';
import './records';
import './ways';
import './mistakes';
