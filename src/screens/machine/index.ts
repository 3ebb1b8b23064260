import './machine';
import './field';
import './list';
