/** The theme: as the system, or chosen. public/theme.js reads the same key before the first paint. */
export type Theme = 'system' | 'light' | 'dark';
const key = 'drywright.theme';

const isChosen = (value: unknown): value is 'light' | 'dark' => value === 'light' || value === 'dark';

export class ThemeState {
  #theme = $state<Theme>('system');

  constructor() {
    const set = document.documentElement.dataset.theme;
    if (isChosen(set)) this.#theme = set;
  }

  get theme(): Theme {
    return this.#theme;
  }

  choose(theme: Theme): void {
    this.#theme = theme;
    if (theme === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
    try {
      if (theme === 'system') localStorage.removeItem(key);
      else localStorage.setItem(key, theme);
    } catch {
      // A browser that keeps nothing shows the chosen theme until the page is closed.
    }
  }
}
