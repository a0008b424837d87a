import * as vscode from 'vscode';
import type { NotSaid } from '../../server/src/lsp/board-protocol';
import {
  choicesRequest,
  countsMeasuredRequest,
  hardwareRequest,
  lessonRequest,
  parameterFormRequest,
  sayMeaningsRequest,
} from '../../server/src/lsp/learn-protocol';
import type { FromLearn, ToLearn } from '../learn/messages';
import { chooseBoard } from './board-choice';
import type { Client } from './client';
import { exists } from './exists';
import { fileOf, inHand, type LearnSubject } from './learn-subject';
import { pickFlight } from './pick-recording';
import { plainProfile, unchangeable, writtenProfile } from './profile-file';

const { t } = vscode.l10n;

type LearnRequest = Extract<FromLearn, { kind: 'ask' }>;

/** What the page asked; what is to be kept is in the profile's file before it is answered. */
export async function answered(
  client: Client,
  subject: LearnSubject,
  message: LearnRequest,
): Promise<ToLearn> {
  const { id } = message;
  const of = await inHand(subject);
  switch (message.to) {
    case 'say': {
      const answer = (await client.request(sayMeaningsRequest, { of, ...message.asked })) ?? stopped();
      return { kind: 'answer', to: 'say', id, answer: await kept(client, subject, answer) };
    }
    case 'choices': {
      const answer = (await client.request(choicesRequest, { of, ...message.asked })) ?? [];
      return { kind: 'answer', to: 'choices', id, answer };
    }
    case 'form': {
      const answer = await client.request(parameterFormRequest, message.asked);
      return { kind: 'answer', to: 'form', id, answer };
    }
    case 'hardware': {
      const answer = (await client.request(hardwareRequest, { of, ...message.asked })) ?? stopped();
      return { kind: 'answer', to: 'hardware', id, answer: await kept(client, subject, answer) };
    }
    case 'measured': {
      const flown = await pickFlight(client, t('Say What Settings Mean'));
      if (flown === null) return { kind: 'answer', to: 'measured', id, answer: null };
      const answer =
        typeof flown === 'string'
          ? refused(flown)
          : ((await client.request(countsMeasuredRequest, { of, flown })) ?? stopped());
      return { kind: 'answer', to: 'measured', id, answer };
    }
    case 'lesson': {
      const answer = (await client.request(lessonRequest, { of, ...message.asked })) ?? stopped();
      const told = await kept(client, subject, answer);
      return {
        kind: 'answer',
        to: 'lesson',
        id,
        answer: told.kind === 'taught' ? told : { asks: false, ...told },
      };
    }
  }
}

function stopped(): NotSaid {
  return refused(t('Propsoff’s checks are not running.'));
}

function refused(message: string): NotSaid {
  return { kind: 'refused', message };
}

/** Writes the profile that an answer holds; an answer without one stays as it is. */
async function kept<A extends { readonly kind: string; readonly profile?: string }>(
  client: Client,
  subject: LearnSubject,
  answer: A,
): Promise<A | NotSaid> {
  const { profile } = answer;
  if (profile === undefined) return answer;
  const fault = await keep(client, subject, profile);
  return fault === null ? answer : refused(fault);
}

/** Null where it is kept; else why not. */
async function keep(client: Client, subject: LearnSubject, profile: string): Promise<string | null> {
  const { uri, board } = subject;
  const file = fileOf(subject);
  if (file === null || board === null || !vscode.workspace.isTrusted)
    return t('Nothing can be kept here: open a folder that you trust first.');
  const isThere = await exists(file);
  const before = isThere ? await plainProfile(file) : '';
  if (isThere && subject.isNew)
    return t('There is a profile {board} by now: close this page and open it again.', { board });
  if (before === null || (!isThere && !subject.isNew)) return unchangeable(board);
  if (!(await writtenProfile(client, file, profile, before)))
    return t('The profile {board} could not be written.', { board });
  const isFirst = subject.isNew;
  subject.isNew = false;
  if (uri === null || subject.isByName || !isFirst) return null;
  await chooseBoard(client, uri, board);
  return null;
}
