/**
 * Every word of the page itself in British English. What describes an input or an answer (labels, sources, sentences,
 * risks) comes from the core and is shown as it stands.
 */
import type { Kind, MarkName, Verdict } from '../generated/contract';
import type { SectionName } from '../form/layout';
import type { Slip } from '../state/slips';

const verdicts: Record<Verdict, string> = {
  in_time: 'In time',
  too_late: 'Too late',
  not_reached: 'Not ready',
  at_risk: 'At risk',
};

const sections: Record<SectionName, string> = {
  film: 'Film',
  pile: 'Flock pile',
  part: 'Part',
  workshop: 'Workshop',
  room: 'Route: room, overnight',
  static_oven: 'Route: static oven',
  tunnel: 'Route: tunnel oven',
  targets: 'Targets',
  tariffs: 'Energy prices',
  costs: 'Labour, floor and equipment',
  numerics: 'Computation',
};

const marks: Record<MarkName, string> = {
  open: 'open time',
  touch: 'touch-dry',
  tack_free: 'tack-free',
  dry_through: 'dry through',
  cured: 'cured',
  cool: 'cool to handle',
  ready: 'ready to handle',
};

const slips: Record<Slip, (label: string, unit: string) => string> = {
  missing: (label, unit) => `${label} needs a number${unit ? ` in ${unit}` : ''}.`,
  number: (label, unit) => `${label} must be a number${unit ? ` in ${unit}` : ''}, such as 1.5 or 1,5.`,
  whole: (label) => `${label} must be a whole number.`,
  foreign: (label, unit) => `${label} is no number in the file. Type it here${unit ? ` in ${unit}` : ''}.`,
};

/** Cautions of the page itself; those of materials come from the catalogue. */
const cautions = {
  title: 'Cautions',
  hot: 'Oven routes: surfaces, parts and carriers leave hot. Wear gloves, mark the outfeed, let parts cool before handling.',
  always: "The maker's data sheet, local codes and a licensed practitioner come before this page.",
};

export const en = {
  language: 'en',
  name: 'Drywright',
  line: 'When a sprayed adhesive film is dry, cured and cool: in a room, a static oven, a tunnel',
  private: 'Nothing leaves this page',
  privateMore: 'Everything is computed on this machine. No figure of yours is sent anywhere.',
  errorPrefix: 'Error: ',
  skip: 'Skip to the answers',
  skipInputs: 'Skip to the inputs',

  job: {
    name: 'Name of the job',
    unnamed: 'Unnamed job',
    demo: 'Load demo',
    demos: 'Worked examples',
    open: 'Open…',
    save: 'Save',
    reset: 'Reset',
    print: 'Print',
    demoHint: 'Replace all inputs with the worked demo job',
    openHint: 'Open a job from a file. A file can also be dropped on the page, or its text pasted.',
    saveHint: 'Save this job as a file',
    resetHint: 'Set every input to its default',
    printHint: 'Print the sheet: answers, picture, settings, cautions',
    undo: 'Bring back the former job',
    replaced: (what: string) => `${what} loaded.`,
    demoLoaded: 'The demo job',
    defaultsLoaded: 'The default job',
    fileLoaded: (file: string) => `“${file}”`,
    pasted: 'The pasted text',
    leftOut: (paths: readonly string[]) => {
      const more = paths.length - 5;
      return `Left out, because the form has no place for it: ${paths.slice(0, 5).join(', ')}${more > 0 ? ` and ${more} more` : ''}.`;
    },
    notJson: (what: string) =>
      `${what} cannot be read: it is not JSON, or not all of it. Nothing was changed.`,
    notJob: (what: string) => `${what} is no job of this page. Nothing was changed.`,
    newer: (what: string, version: number) =>
      `${what} was written by a newer version of this page (job version ${version}). Nothing was changed.`,
    savedLast: 'Saved with the last good values of the inputs that need a look.',
    notKept: 'This browser does not let the page keep the job. Save it as a file before you leave.',
  },

  theme: {
    title: 'Theme',
    system: 'As the system',
    light: 'Light',
    dark: 'Dark',
  },

  engine: {
    starting: 'Loading the core…',
    computing: 'Computing…',
    fresh: 'Up to date',
    old: 'These answers belong to the inputs before your last change.',
    oldWhy: 'They stay until the inputs can be computed.',
    broken: 'The computation broke down and has been restarted. Change an input to try again.',
    unreachable:
      'The core could not be loaded. Load the page again; if it stays so, this browser may be too old for WebAssembly.',
    partLost: 'A part of the page could not be loaded. Load the page again.',
    again: 'Try again',
    detail: 'Detail for a report',
  },

  answers: {
    title: 'Answers',
    ready: 'Ready to handle after',
    deadline: 'Deadline',
    spot: 'Judged at',
    binding: 'Comes last',
    never: 'Not ready',
    late: (duration: string) => `${duration} too late`,
    spare: (duration: string) => `${duration} to spare`,
    dangers: (n: number) => (n === 1 ? '1 danger' : `${n} dangers`),
    notices: (n: number) => (n === 1 ? '1 notice' : `${n} notices`),
    calm: 'none found',
    detail: 'In detail',
    risks: 'Risks',
    warnings: 'Warnings about the job as a whole',
    rests: 'Numbers from trials',
    notYet: 'There is no answer yet: put the inputs right that are listed above.',
    none: 'No route is switched on. Switch on a room, a static oven or a tunnel in the inputs.',
    verdicts,
    announceWrong: (title: string) => `${title}. The list stands above the answers.`,
    announce: (sentences: string) => `New answer. ${sentences}`,
  },

  lanes: {
    title: 'From spraying to packing',
    axis: 'time after spraying, logarithmic',
    states: { wet: 'wet', touch: 'touch-dry', dry: 'dry through', cured: 'cured' },
    statesDone: { wet: 'wet', touch: 'touch-dry', dry: 'dry', cured: 'cured' },
    heated: 'heated',
    cooling: 'cooled by air',
    deadline: 'deadline',
    out: 'out of the oven',
    key: 'State of the film',
    table: 'The picture as a table',
    alt: 'One lane per route on a logarithmic axis of time after spraying.',
    route: 'Route',
    event: 'Event',
    time: 'Time after spraying',
    where: 'Where',
    state: 'Film from then on',
    end: 'end of the run',
    enters: 'enters',
    missing: (marks: string) => `Not reached: ${marks}`,
  },

  curves: {
    log: 'Logarithmic',
    linear: 'Linear',
    scale: 'Axis of time',
    water: 'Water in the film',
    waterAxis: 'g/kg of solids',
    mean: 'mean',
    outer: 'outer 5 %',
    surface: 'surface',
    inner: 'at the part',
    equilibrium: 'in balance with the air',
    conversion: 'Crosslinking',
    conversionAxis: '%',
    least: 'least',
    temperature: 'Temperatures',
    temperatureAxis: '°C',
    air: 'air',
    film: 'film',
    back: 'back of the part',
    limit: 'limit of the part',
    time: (unit: string) => `time after spraying (${unit})`,
    timeLog: 'time after spraying',
    summary: (title: string, first: string, last: string) => `${title}: from ${first} to ${last}.`,
    table: 'Values as a table',
    stages: 'Stages:',
    profileWaterAxis: 'water (g/kg of solids)',
    profileConversionAxis: 'conversion (%)',
    profileWater: 'Water through the film',
    profileConversion: 'Crosslinking through the film',
    depth: 'height: share of solids below, 0 at the part, 1 at the surface',
    noCure: 'This adhesive has no crosslinker.',
    at: 'at',
  },

  route: {
    title: 'In detail',
    tabs: 'Routes',
    marks: 'Marks',
    mark: 'Mark',
    time: 'After spraying',
    where: 'Where',
    exit: 'At the exit',
    water: 'Water',
    conversion: 'Conversion, mean (least)',
    filmT: 'Film',
    partT: 'Part, hottest',
    note: 'Remark',
    yes: 'yes',
    no: 'no',
    risks: 'Risks',
    noRisks: 'None found.',
    severity: { notice: 'Notice', danger: 'Danger' },
    warnings: 'Warnings',
    noWarnings: 'None.',
    pictures: 'Over time and through the film',
    balances: 'Balances',
    balancesNote:
      'What came in must have gone out or be kept. The error is what the computation lost on the way.',
    account: 'Account',
    in: 'In',
    out: 'Out',
    kept: 'Kept',
    error: 'Error',
    relative: 'Relative',
    balanceWater: 'Water, g/m²',
    balanceHeat: 'Heat, kJ/m²',
    term: 'Term',
    value: 'Value',
    working: 'Working',
    workingNote: 'The figures on the way, with the equation and where it comes from.',
    stage: 'Stage',
    quantity: 'Quantity',
    equation: 'Equation',
    source: 'Source',
    status: 'The run',
    complete: 'The run is complete.',
    incomplete: 'The run ended early, at its step budget.',
    counters: (steps: number, rejected: number, derivatives: number, jacobians: number, factors: number) =>
      `${steps} steps, ${rejected} rejected, ${derivatives} derivatives, ${jacobians} Jacobians, ${factors} factorisations.`,
  },

  form: {
    title: 'Inputs',
    sections,
    record: { adhesive: 'Adhesive', part: 'Material of the part', fibre: 'Fibre' },
    own: 'own numbers',
    changed: (record: string) => `Numbers differ from “${record}”.`,
    restore: 'Use the record again',
    more: 'More about it',
    moreOn: (names: string) => `on: ${names}`,
    on: 'Switched on',
    off: 'switched off',
    switchOn: (name: string) => `Include: ${name}`,
    usual: (range: string) => `usually ${range}`,
    accepted: 'Accepted',
    default: 'Default',
    effect: 'When raised',
    help: 'About',
    helpFor: (label: string) => `About ${label}`,
    sourceOf: 'Source',
    mayBeEmpty: 'may stay empty',
    empty: 'empty',
    useDefault: 'Set to default',
    add: (item: string) => `Add ${item.toLowerCase()}`,
    remove: (item: string, n: number) => `Remove ${item.toLowerCase()} ${n}`,
    up: (item: string, n: number) => `Move ${item.toLowerCase()} ${n} up`,
    down: (item: string, n: number) => `Move ${item.toLowerCase()} ${n} down`,
    item: (item: string, n: number) => `${item} ${n}`,
    yes: 'yes',
    no: 'no',
    errorsTitle: (n: number) => (n === 1 ? 'One input needs a look' : `${n} inputs need a look`),
    error: 'Error: ',
    rest: 'From a trial.',
    rests: (n: number) => (n === 1 ? '1 number from a trial' : `${n} numbers from trials`),
    restsOn: (names: string) => `from a trial: ${names}`,
    in: 'in ',
    givenAs: 'given as',
    count: (n: number, list: string) =>
      list === 'tunnel.zones' ? (n === 1 ? '1 zone' : `${n} zones`) : String(n),
  },

  slips,
  faultRange: (label: string, low: string, high: string, unit: string) =>
    `${label} must be between ${low} and ${high}${unit ? ` ${unit}` : ''}.`,

  faultChoice: (label: string, choices: readonly string[]) =>
    `${label} must be one of: ${choices.join(', ')}.`,

  faultWhole: (label: string, low: string, high: string, unit: string) =>
    `${label} must be a whole number from ${low} to ${high}${unit ? ` ${unit}` : ''}.`,

  cautions,

  sheet: {
    title: 'Drying and cure sheet',
    settings: 'Settings',
    marks: 'Marks, time after spraying',
    warnings: 'Risks and warnings',
    old: 'The answers on this sheet are older than its settings.',
    date: 'Date',
    name: 'Name',
    signature: 'Signature',
    printed: 'Computed by Drywright on the machine it was printed from.',
  },

  marks,
  routes: { room: 'Room', static_oven: 'Static oven', tunnel: 'Tunnel oven' } as Record<Kind, string>,

  footer: {
    accuracy:
      'A model, not a measurement: it predicts one flat part with an even coat. Where a number decides over money or safety, run a trial.',
  },
} as const;
