/** A person's own threads: the list, and one of them. */
import './own-list';
import './own-thread';
