import './enter';
