import { journeysIn } from './journeys';
import { chromium } from './support/chromium';

journeysIn(chromium);
