/**
 * What a web worker begins with, to load the server. Hosts start a worker through scripts of their own, so that it does not know where it came from: the
 * client's first message is the address of the folder that this file lies in. All that follow are the protocol's.
 */

/** The scope of the worker. The types of a browser are not among those of this project. */
declare const self: {
  onmessage: (first: { readonly data: string }) => void;
  importScripts(url: string): void;
  /** As on Node.js, by which files of the server load each other. */
  require(name: string): object;
  exports: object;
};

self.onmessage = ({ data: folder }) => {
  const loaded = new Map<string, object>();
  self.require = name => {
    const known = loaded.get(name);
    if (known) return known;
    const own = self.exports = {};
    loaded.set(name, own);
    self.importScripts(folder + name.replace('./', ''));
    return own;
  };
  self.require('./server.browser.js');
};
