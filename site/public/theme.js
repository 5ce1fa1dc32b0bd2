// Runs before the first paint. A store that is forbidden leaves the theme to the system.
try {
  const theme = localStorage.getItem('drywright.theme');
  if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme;
} catch {
  /* nothing kept, nothing lost */
}
