import '@fontsource-variable/cabin';
import './look/workbench.css';
import './look/print.css';
import { options, render } from 'preact';
import { App } from './app.tsx';
import { start } from './state/keeping.ts';

/**
 * Drawn once for all that changes in one go: a paper is read some promises after it is written, and no room is taken
 * down and built up again for the moment between.
 */
options.debounceRendering = (draw) => void setTimeout(draw);

await start();
render(<App />, document.getElementById('app') as HTMLElement);
