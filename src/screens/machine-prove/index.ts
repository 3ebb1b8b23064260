import './prove';
