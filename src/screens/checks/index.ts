import './checks';
