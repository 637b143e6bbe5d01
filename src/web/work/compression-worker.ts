import { expectedCompression } from '../../engine/index.js';
import type { CompressionQuestion } from '../../job/index.js';
import { answerAll } from './ask-worker.js';

answerAll(({ geometry, by }: CompressionQuestion) => expectedCompression(geometry, { by }));
