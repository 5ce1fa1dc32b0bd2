import './styles/tokens.css';
import './styles/base.css';
import './styles/controls.css';
import './styles/plot.css';
import './styles/print.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { browserEngine } from './engine/browser';
import { firstVoice, speak } from './text/voice';

const target = document.getElementById('page');
const first = firstVoice();
const engine = browserEngine(first);
engine.warm();
speak(first, 'main').then(
  () => target && mount(App, { target, props: { engine } }),
  () => document.getElementById('lost')?.removeAttribute('hidden'),
);
