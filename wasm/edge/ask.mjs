// Requests as a test writes them, over a connection of their own: a connection that is used again may just be ending.
import { request } from 'node:http';
import { connect } from 'node:net';
import { gunzipSync } from 'node:zlib';

/** How long an answer is waited for before it counts as lost, on a machine that has much else to do [ms]. */
export const longest = 240_000;

const json = { 'Content-Type': 'application/json' };

/** Sends a request, a POST where it has a body, and gives status, headers and text of the answer. The path goes out as it is given. */
export const ask = (base, path, body, headers = body === undefined ? {} : json, method = body === undefined ? 'GET' : 'POST') =>
  new Promise((resolve, reject) => {
    const { hostname, port } = new URL(base);
    const r = request({ hostname, port, method, path, headers, agent: false }, (response) => {
      const parts = [];
      response.on('data', (part) => parts.push(part));
      response.once('error', reject);
      response.once('end', () => {
        const bytes = Buffer.concat(parts);
        const text = (response.headers['content-encoding'] === 'gzip' ? gunzipSync(bytes) : bytes).toString();
        resolve({ status: response.statusCode, headers: response.headers, text });
      });
    });
    r.once('error', reject);
    r.setTimeout(longest, () => r.destroy(new Error(`no answer after ${longest} ms`)));
    r.end(body);
  });

/** Sends bytes and nothing more, and gives the status that comes back, 0 for none; an answer is waited for as long as said [ms]. */
export const send = (base, bytes, wait) =>
  new Promise((resolve) => {
    const { hostname, port } = new URL(base);
    const begun = performance.now();
    let text = '';
    const done = () => {
      clearTimeout(timer);
      socket.destroy();
      resolve({ status: Number(/^HTTP\/1\.1 (\d+)/.exec(text)?.[1] ?? 0), text, took: performance.now() - begun });
    };
    const timer = setTimeout(() => setImmediate(done), wait); // what has come meanwhile is read first
    const socket = connect({ host: hostname, port: Number(port) }, () => socket.write(bytes));
    socket.on('data', (part) => {
      text += part;
      if (text.includes('\r\n\r\n')) setTimeout(done, 100); // the body may follow
    });
    socket.once('close', done);
    socket.once('error', done);
  });
