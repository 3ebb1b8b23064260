import './threads';
import './find';
import './type';
