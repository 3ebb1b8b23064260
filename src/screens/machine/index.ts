import './machine';
import './field';
import './list';
import './sheet';
import './new-machine';
