import './stops';
