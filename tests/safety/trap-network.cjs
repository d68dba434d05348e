// Loaded before a program: whatever would leave the machine is written to the error output and refused.
const refuse =
  (what) =>
  (...given) => {
    process.stderr.write(`NETWORK ${what} ${String(given[0]?.host ?? given[0]?.path ?? given[0])}\n`);
    throw new Error(`${what} is not allowed here.`);
  };
for (const name of ['http', 'https'])
  for (const what of ['request', 'get']) require(`node:${name}`)[what] = refuse(`${name}.${what}`);
require('node:http2').connect = refuse('http2.connect');
require('node:tls').connect = refuse('tls.connect');
require('node:net').Socket.prototype.connect = refuse('net.connect');
require('node:net').Server.prototype.listen = refuse('net.listen');
require('node:dgram').createSocket = refuse('dgram.createSocket');
for (const what of ['lookup', 'resolve', 'resolve4', 'resolve6']) require('node:dns')[what] = refuse(`dns.${what}`);
for (const what of ['spawn', 'spawnSync', 'exec', 'execSync', 'execFile', 'execFileSync', 'fork'])
  require('node:child_process')[what] = refuse(`child_process.${what}`);
globalThis.fetch = refuse('fetch');
globalThis.WebSocket = refuse('WebSocket');
