// Loaded before a program: whoever opens a connection or asks for an address is told of, and fails.
const refuse = what => () => { throw new Error(`the network is out of bounds: ${what}`); };
require('node:net').Socket.prototype.connect = refuse('connect');
const dns = require('node:dns');
for (const name of ['lookup', 'resolve', 'resolve4', 'resolve6']) dns[name] = dns.promises[name] = refuse(name);
