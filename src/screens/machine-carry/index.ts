import './carry';
