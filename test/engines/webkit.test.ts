import { journeysIn } from './journeys';
import { webkit } from './support/webkit';

journeysIn(webkit);
