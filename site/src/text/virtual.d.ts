/** Made while the page is built (vite/words); text/language.ts says what it holds. */
declare module 'virtual:words' {
  const languages: unknown;
  export default languages;
}
