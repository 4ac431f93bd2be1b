// Serves an extension over http on this machine: VS Code loads it from there into the web worker host, whose pages are of another origin.
import { serve } from '../../../client/site/serve.mjs';

const HEADERS = { 'Access-Control-Allow-Origin': '*', 'Cross-Origin-Resource-Policy': 'cross-origin' };

/** `instead` holds content, by path, that is given in place of what the folder has there. */
export const serveExtension = (folder, instead = {}) => serve(folder, { instead, headers: HEADERS });
