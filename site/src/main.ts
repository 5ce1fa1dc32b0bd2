import './styles/tokens.css';
import './styles/base.css';
import './styles/controls.css';
import './styles/plot.css';
import './styles/print.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { browserEngine } from './engine/browser';

const target = document.getElementById('page');
if (target) mount(App, { target, props: { engine: browserEngine() } });
