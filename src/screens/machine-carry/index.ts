import './carry';
import './codes-show';
import './codes-read';
import './shelf';
