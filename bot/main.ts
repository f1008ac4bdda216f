/** The bot and its console. How the memory is to be used is settled before anything else is so much as read. */
import './app/small-heap.js';

await import('./serve.js');
