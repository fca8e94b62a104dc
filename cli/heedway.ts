#!/usr/bin/env node
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runProgram } from './compiled.ts';

runProgram(dirname(fileURLToPath(import.meta.url)));
