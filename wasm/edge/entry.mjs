// What the platform calls: the program of .build/edge, and problem documents where there is no answer of it.
import worker from '../../.build/edge/worker.mjs';

const problem = (status, type, title) =>
  new Response(JSON.stringify({ type: `urn:drywright:problem:${type}`, title, status }), {
    status,
    headers: { 'Content-Type': 'application/problem+json', 'Cache-Control': 'no-store', 'X-Content-Type-Options': 'nosniff' },
  });

export default {
  async fetch(request, env, context) {
    // The library fails at what the program would refuse.
    if (/%(?![0-9a-f]{2})/i.test(new URL(request.url).pathname)) return problem(400, 'address', 'The address cannot be read');
    try {
      return await worker.fetch(request, env, context);
    } catch {
      return problem(500, 'failure', 'The computation broke down');
    }
  },
};
