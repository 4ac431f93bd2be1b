/**
 * What a web worker begins with, to load the server. Hosts start a worker through scripts of their own, so that it does not know where it came from: the
 * client's first message is the address of the folder that this file lies in. All that follow are the protocol's.
 */

/** The scope of the worker. The types of a browser are not among those of this project. `require` and `exports`: as on Node.js, by which files of the server load each other. */
declare const self: { onmessage: (first: { readonly data: string }) => void; importScripts(url: string): void; require(name: string): object; exports: object };

self.onmessage = ({ data: folder }) => {
  const loaded = new Map<string, object>();
  const load = (name: string): object => {
    const known = loaded.get(name);
    if (known) return known;
    const own = self.exports = {};
    self.importScripts(folder + name.replace('./', ''));
    loaded.set(name, own);
    return own;
  };
  self.require = load;
  load('./server.browser.js');
};

export {};
