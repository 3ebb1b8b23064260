/** Finding a thread: apart from the thread's own screen, which is often the first to be shown. */
import './find';
import './type';
