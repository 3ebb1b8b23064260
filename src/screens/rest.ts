/** Every screen: in one file, which is a quarter smaller than each by itself. */
import './threads';
import './speed';
import './checks';
import './cut';
import './machine';
import './machine-carry';
import './machine-prove';
import './machine-faults';
import './machine-noise';
import './machine-stops';
import './machine-wiring';
import './settings';
import './first-run';
import './enter';
import './shell/later';
