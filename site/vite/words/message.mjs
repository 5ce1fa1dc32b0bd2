/**
 * Reads a message of a language file (cure/words/doc.go says how one is written) and makes the JavaScript that says it.
 * It runs while the page is built: a browser never parses a message.
 */

/**
 * A text; an argument; a choice by number; or, as #, the number that the innermost choice is made by.
 * @typedef {string | { name: string } | { name: string, branches: [selector: string, parts: Part[]][] } | { number: string }} Part
 */

const reasons = {
  brace: 'a brace without its partner',
  name: 'an argument needs a name of letters, digits and underscores',
  kind: 'only {name} and {name, plural, ...} are understood',
  other: 'a plural needs the branch "other"',
  branch: 'a branch of a plural is =number or a category, then a message in braces',
};

/**
 * @param {string} message
 * @returns {Part[]}
 */
export function parse(message) {
  let at = 0;
  const fail = (/** @type {keyof typeof reasons} */ why) => {
    throw new SyntaxError(`${reasons[why]}: ${JSON.stringify(message)}`);
  };
  const space = () => {
    while (/[ \t\r\n]/.test(message[at] ?? '')) at++;
  };
  const word = () => {
    space();
    const found = /^[0-9A-Za-z_]*/.exec(message.slice(at))?.[0] ?? '';
    at += found.length;
    space();
    return found;
  };
  const next = () => message[at++];

  /** Up to the end or to a closing brace, which is left. @param {string} counted the number of the plural around it */
  function parts(counted) {
    /** @type {Part[]} */
    const found = [];
    let text = '';
    const flush = () => {
      if (text) found.push(text);
      text = '';
    };
    while (at < message.length && message[at] !== '}') {
      const c = message[at];
      if (c === "'") text += quoted(counted);
      else if (c === '{') {
        flush();
        found.push(argument());
      } else if (c === '#' && counted) {
        flush();
        at++;
        found.push({ number: counted });
      } else text += next();
    }
    flush();
    return found;
  }

  /** One apostrophe and, where it quotes, all that it quotes. @param {string} counted */
  function quoted(counted) {
    at++;
    const c = message[at];
    if (c === "'") return (at++, c);
    if (c === undefined || !(counted ? '{}#' : '{}').includes(c)) return "'";
    let text = '';
    while (at < message.length) {
      const q = next();
      if (q !== "'") text += q;
      else if (message[at] === "'") text += next();
      else break;
    }
    return text;
  }

  /** What stands in braces. @returns {Part} */
  function argument() {
    at++;
    const name = word();
    if (!/^[A-Za-z_]/.test(name)) fail('name');
    const c = next();
    if (c === '}') return { name };
    if (c !== ',') fail('name');
    if (word() !== 'plural' || next() !== ',') fail('kind');
    /** @type {[string, Part[]][]} */
    const branches = [];
    for (space(); message[at] !== '}'; space()) {
      const sign = message[at] === '=' ? next() : '';
      const selector = word();
      if (!selector || next() !== '{') fail('branch');
      branches.push([`${sign}${selector}`, parts(name)]);
      if (next() !== '}') fail('brace');
    }
    at++;
    if (!branches.some(([selector]) => selector === 'other')) fail('other');
    return { name, branches };
  }

  const whole = parts('');
  if (at < message.length) fail('brace');
  return whole;
}

/**
 * The arguments of a message in the order of their first use; those that a plural is chosen by must be numbers.
 * @param {Part[]} parts
 * @param {Map<string, 'number' | 'any'>} found
 */
export function argumentsOf(parts, found = new Map()) {
  for (const part of parts) {
    if (typeof part === 'string' || !('name' in part)) continue;
    const counts = 'branches' in part;
    if (counts || !found.has(part.name)) found.set(part.name, counts ? 'number' : 'any');
    if (counts) for (const [, inner] of part.branches) argumentsOf(inner, found);
  }
  return found;
}

/**
 * The JavaScript of a message: a string where it has no arguments, else a function of one object of them. `say` puts a
 * value into a text and `choose` picks a branch; both are in src/text/say.ts.
 * @param {string} message
 */
export function compile(message) {
  const parts = parse(message);
  return argumentsOf(parts).size > 0 ? `a=>${template(parts)}` : template(parts);
}

/**
 * @param {Part[]} parts
 * @returns {string}
 */
function template(parts) {
  if (parts.every((p) => typeof p === 'string')) return JSON.stringify(parts.join(''));
  return `\`${parts.map(piece).join('')}\``;
}

/**
 * @param {Part} part
 * @returns {string}
 */
function piece(part) {
  if (typeof part === 'string') return part.replace(/[\\`]|\$(?=\{)/g, '\\$&');
  if ('number' in part) return `\${say(a.${part.number})}`;
  if (!('branches' in part)) return `\${say(a.${part.name})}`;
  const branches = part.branches.map(([selector, inner]) => `${JSON.stringify(selector)}:${template(inner)}`);
  return `\${choose(a.${part.name},{${branches.join(',')}})}`;
}
