import { main } from './main.ts';

// Whoever reads may stop reading, as in `heedway check … | head`: that ends it quietly.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

void main(process.argv.slice(2));
