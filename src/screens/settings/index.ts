import './settings';
