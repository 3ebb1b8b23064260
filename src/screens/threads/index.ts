import './threads';
import './look-up';
import './limits';
import './measure';
import './identify';
import './held';
import './own';
import './trains';
