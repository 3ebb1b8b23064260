import { journeysIn } from './journeys';
import { firefox } from './support/firefox';

journeysIn(firefox);
