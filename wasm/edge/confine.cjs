// Loaded into the platform's tools before anything else (NODE_OPTIONS): they reach this machine and nobody else. What they asked
// for elsewhere is refused, and written to the file that CONFINED names.
const { appendFileSync } = require('node:fs');
const net = require('node:net');

const here = /^(localhost|127(\.\d+){3}|::1|0\.0\.0\.0)$/;
const connect = net.Socket.prototype.connect;

net.Socket.prototype.connect = function (...args) {
  const [first, second] = Array.isArray(args[0]) ? args[0] : args;
  const { path, host = 'localhost' } =
    typeof first === 'object' ? first : { path: isNaN(first) ? first : undefined, host: typeof second === 'string' ? second : undefined };
  if (path || here.test(host)) return connect.apply(this, args);
  if (process.env.CONFINED) appendFileSync(process.env.CONFINED, `${host}\n`);
  process.nextTick(() => this.destroy(new Error(`${host} is not this machine`)));
  return this;
};
