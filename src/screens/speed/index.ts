import './speed';
