#!/usr/bin/env node
import './commands/engine.ts';
import { runCommand } from './commands/run-command.ts';

process.exitCode = await runCommand(process.argv.slice(2), process.cwd());
