import './show';
import './read';
