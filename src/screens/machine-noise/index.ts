import './noise';
