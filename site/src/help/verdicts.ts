/** The answer to a question in a sentence or two, from what is computed already. */
import type { Result, Route } from '../generated/contract';
import { text } from '../text';
import { help } from '../text/help';
import { percent } from '../text/quantity';
import type { QuestionName } from './asking.svelte';

const inTime = (r: Route): boolean => r.answer.verdict === 'in_time';

export function verdictOf(question: QuestionName, { routes }: Result): string[] {
  switch (question) {
    case 'overnight':
      return overnight(routes);
    case 'settings':
      return settings(routes.filter((r) => r.kind !== 'room'));
    case 'speed':
      return speed(routes);
  }
}

function overnight(routes: readonly Route[]): string[] {
  const t = help.ask;
  const room = routes.find((r) => r.kind === 'room');
  const ovens = routes.filter((r) => r.kind !== 'room');
  if (room && inTime(room)) return [t.yes({ margin: room.answer.margin_text })];
  const good = ovens.filter(inTime).map((r) => t.heat({ route: r.title, margin: r.answer.margin_text }));
  const heat = good.length > 0 ? good : ovens.length > 0 ? [t.noHeat] : [];
  if (!room) return [t.noRoom, ...good];
  return [ofRoom(room), ...heat];
}

function ofRoom({ answer }: Route): string {
  const t = help.ask;
  if (answer.margin_s === null) return t.never;
  return answer.margin_s < 0
    ? t.late({ margin: answer.margin_text })
    : t.yesBut({ margin: answer.margin_text });
}

function settings(ovens: readonly Route[]): string[] {
  const t = help.ask;
  if (ovens.length === 0) return [t.noOven];
  return ovens.map((r) =>
    inTime(r)
      ? t.asSet({ route: r.title, margin: r.answer.margin_text })
      : t.asSetBad({ route: r.title, verdict: text.answers.verdicts[r.answer.verdict].toLowerCase() }),
  );
}

/** Of each oven what it runs out of first. */
function speed(routes: readonly Route[]): string[] {
  const t = help.ask;
  const said = routes.flatMap((r) => {
    const [first] = r.limits;
    return first ? [t.first({ route: r.title, share: percent(first.share), text: first.text })] : [];
  });
  return said.length > 0 ? said : [t.capacity];
}
