import { chromeOf } from '../page/chrome.ts';
import type { Page, SiteContext } from '../page/page.ts';
import { addresses } from '../site/addresses.ts';
import { blankSurvey, type StationOnPaper } from './survey-on-paper.ts';

/** The blank survey: what is written down on a walk round a vehicle. */
export interface BlankSurveyBody {
  readonly blanks: readonly string[];
  readonly stations: readonly StationOnPaper[];
}

export const blankSurveyTitle = 'Survey of a vehicle, blank';

/** The page of the blank survey sheet, to be printed before there is a job. */
export function blankSurveyPage(context: SiteContext): Page {
  const address = addresses.survey;
  return {
    address,
    template: 'blank-survey.njk',
    model: () => {
      const body: BlankSurveyBody = {
        blanks: ['Plate or order', 'Odometer', 'Walked round by', 'Date'],
        stations: blankSurvey(),
      };
      const above = [['Vehicles', addresses.vehicles]] as const;
      return { ...chromeOf(context, { address, title: blankSurveyTitle, above }), body };
    },
  };
}
