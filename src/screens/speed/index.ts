import './speed';
import './feed';
import './trace';
import './raise';
import './chart';
