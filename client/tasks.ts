/** The tasks of pages: they print what the command line prints. The server answers from the pages as they are in the editor, so that no program is started, and they run in a browser too. */
import { CustomExecution, EventEmitter, Task, tasks, TaskGroup, TaskScope, Uri, workspace, type Disposable, type Pseudoterminal, type TaskDefinition } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { CHECK, type CheckParams, type Printed } from '../server/lsp/protocol.ts';
import { ask } from './ask.ts';
import { pageAtHand } from './page.ts';
import { doesOf, FAILED, MATCHER, NO_PAGE, onTerminal, TASKS, TYPE, type Does } from './task-words.ts';

export const provideTasks = (client: BaseLanguageClient): Disposable => tasks.registerTaskProvider(TYPE, {
  provideTasks: () => TASKS.map(({ does, name }) => taskOf({ type: TYPE, does }, does, name, client)),
  // One that is written in tasks.json is the same definition, and gets what it does.
  resolveTask: ({ definition, name }) => {
    const does = doesOf(definition);
    return does && taskOf(definition, does, name, client);
  },
});

function taskOf(definition: TaskDefinition, does: Does, name: string, client: BaseLanguageClient): Task {
  const task = new Task(definition, TaskScope.Workspace, name, 'Platewright', new CustomExecution(resolved => Promise.resolve(new Printing(client, does, resolved))), MATCHER);
  task.group = TaskGroup.Build;
  return task;
}

class Printing implements Pseudoterminal {
  private readonly wrote = new EventEmitter<string>();
  private readonly closed = new EventEmitter<number>();
  readonly onDidWrite = this.wrote.event;
  readonly onDidClose = this.closed.event;

  constructor(private readonly client: BaseLanguageClient, private readonly does: Does, private readonly definition: TaskDefinition) {}

  open(): void { void this.print(); }
  close(): void { this.wrote.dispose(); this.closed.dispose(); }

  private async print(): Promise<void> {
    const { text, code } = await this.answer();
    this.wrote.fire(onTerminal(text));
    this.closed.fire(code);
  }

  private async answer(): Promise<Printed> {
    const { definition, does } = this;
    const page = does === 'check all pages' ? undefined : pageOf(definition['page']);
    if (does !== 'check all pages' && !page) return { text: `${NO_PAGE}\n`, code: 3 };
    const uri = page && this.client.code2ProtocolConverter.asUri(page);
    const params: CheckParams = { ...(uri === undefined ? {} : { pages: [uri] }), strict: definition['strict'] === true };
    const answer = this.client.isRunning() ? await ask<Printed>(this.client, CHECK, params, 'A task') : 'failed';
    return typeof answer === 'string' ? { text: `${FAILED}\n`, code: 3 } : answer;
  }
}

/** The page that a task names, from the first open folder; else the one in front. */
function pageOf(named: unknown): Uri | undefined {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  return typeof named === 'string' && folder ? Uri.joinPath(folder, named) : pageAtHand()?.document.uri;
}
