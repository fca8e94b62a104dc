import '@fontsource-variable/cabin';
import './look/workbench.css';
import './look/print.css';
import { render } from 'preact';
import { App } from './app.tsx';
import { start } from './state/keeping.ts';

await start();
render(<App />, document.getElementById('app') as HTMLElement);
