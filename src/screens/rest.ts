/** Every screen that isn't among the first to be shown: in one file, which is a quarter smaller than each by itself. */
import './threads/pages';
import './speed/pages';
import './cut';
import './machine';
import './machine-carry';
import './machine-prove';
import './machine-faults';
import './machine-noise';
import './machine-stops';
import './machine-wiring';
import './settings';
import './enter';
import './shell/later';
