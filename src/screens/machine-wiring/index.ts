import './wiring';
