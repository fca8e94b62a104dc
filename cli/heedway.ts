#!/usr/bin/env node
import { main } from './main.ts';

await main(process.argv.slice(2));
