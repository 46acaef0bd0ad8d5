/** What each command does, and its options. */
const texts: Readonly<Record<string, string>> = {
  build: `rackleaf build [--job JOB] [--audience bench|customer|shop] [--keep-going]

Reads content/, plans and checks every job, and builds the site.
  --audience    who the site is for; the default is bench, in dist. A customer's copy has a packet
                only where the job may be handed over; otherwise it says why, and the status is 1
  --job         one job alone, as a searchable site of its own in .rackleaf/jobs/JOB/dist: with its
                revisions, its vehicle, its parts and the guides, and with nothing of other jobs
  --keep-going  builds what can be built although the input has errors`,
  serve: `rackleaf serve [--port 8080]

Serves the site to this machine, each page anew as soon as a file that it is made from is saved.
A job that can't be read, or is still being planned, keeps its page as it was last, with what is wrong
above it and NOT CURRENT on every sheet. Ends with 2 where the latest save has errors.
  --port        0 for any that is free`,
  check: `rackleaf check [JOB] [--plain|--json]
rackleaf check [JOB] --fix [--yes]

Prints every error of the input and every finding, with file, line and column, the first to mend first,
and renews the schemas for editors. What several jobs have from one vehicle, part or the shop is told once.
  --plain       one line for each, as compilers print them, so that an editor jumps to its place:
                file:line:column: error, warning or note: what is wrong; to do: what helps [rule]
  --fix         mends what can be meant in one way only, shown first: a decimal comma or a unit spelled
                out, a label that stands twice, the state of a control that its part says to be unsafe.
                Facts of the vehicle, readings, reasons, acceptances and open terminals are never written
  --yes         writes it without a question`,
  schemas: `rackleaf schemas [--yes]

Renews the schemas for editors in .rackleaf/schemas, and names each in the first line of the file that is
written by it, where none is named there: shown first, nothing else of the file is touched.
  --yes         writes the lines without a question`,
  plan: `rackleaf plan JOB [--json]
rackleaf plan --schema

Prints the plan of a job; with --json the whole plan document.
  --schema      the JSON Schema of the plan document`,
  compare: `rackleaf compare A B [--to FOLDER] [--json]
rackleaf compare JOB [--to FOLDER] [--json]

Tells what differs from A to B, table by table: fuses, conductors with size and length, parts, places,
boards, settings, channels, speakers, loads, findings, what is taken from the shelf, house rules. Each thing
is G gone, N new, M moved or C changed. Of one job alone it tells what its file asks for today otherwise than
its last released revision. Both call a thing the same where their jobs do; what prints alike is alike, in the
units of the shop. Revisions come from their frozen plans. That something differs does not change the status.
  A, B          JOB, as its sheets show it, or JOB@REV, one of its revisions: estate@A estate
  --to          also writes it as a page, one HTML file with the boards laid over each other
  --json        all that is known of it: values in SI beside their texts, boards with what stands on them`,
  like: `rackleaf like JOB [--most 3] [--json]
rackleaf like --vehicle VEHICLE --space SPACE [--part PART ...] [--most 3] [--json]

Looks among the boards of all other jobs for those that ask for least work to serve here: released ones as
they were frozen, others as planned today. Held against the space and the parts are outline (turned too),
height, what is in the way, sound points, hand and tool room, warmth, edges that ways reach, parts in common,
those that fit another's room and holes, feed and fuse. Of each is told what would have to change, what
takes longest first, in minutes by times: of the shop file.
  --part        a part of the catalogue that is to stand on the board; may be given several times, and twice
                for two of one. Without any, every part of a past board stays
  --vehicle     may be left out where the shop has only one; so may --space
  --most        how many are told`,
  new: `rackleaf new shop [--title NAME] [--units mm|inch] [--samples yes|no] [--thing "wire 4 AWG red 30 ft" ...]
rackleaf new vehicle [NAME] [FLAGS]
rackleaf new vehicle NAME --like VEHICLE [--title TITLE] [--reading "14.2 V, 40 A"] [FLAGS]
rackleaf new part [NAME] [--kind KIND] [FLAGS]
rackleaf new part [NAME] --like PART [--differs "NAME VALUE, NAME VALUE"]
rackleaf new shelf [--list FILE.txt] [--thing "ring lug 4 AWG M8 x10" ...] [--whole yes|no]
rackleaf new job [NAME] [--vehicle VEHICLE] [--space SPACE] [FLAGS]
rackleaf new job NAME --like JOB [--vehicle VEHICLE] [--space SPACE] [--title TITLE] [--issued-on DATE]

Writes a new file of the shop. At a terminal it asks, one thing after another: round a vehicle in the order
of its survey sheet, a part from its leaflet, a job by what plays what. What is wrong is told and asked
again. What is not known yet is a ?: the file is written, and a comment marks the place. Rows that are alike
go in one line, with | between what differs: left|right. A list ends with an empty line, or with , end
behind its last line. Elsewhere, and for what is known already, each question has a flag of its own name. Who
breaks off, or gives a flag that does not fit, goes on with the same command. Nothing is written over.
  shop          makes content/ in an empty folder: a shop file, parts, guides, a vehicle and a job to begin
                with, these two not where --samples is no; --shop says the same
  shelf         what lies on the shelf, one thing a line: it is counted into the stock, and becomes a part where
                the catalogue has none. --list takes the lines of a file, --whole yes takes all else out of it
  NAME          alone, without a word before it, it is that of a job
  --kind        of a part: amplifier, processor, source-unit, speaker, enclosure, battery, alternator,
                fuse-holder, fuse, distribution, wire, cable, relay, terminal, covering, grommet, board-sheet,
                fixing, level-control, isolating-relay, charger, capacitor-bank, crossover, fan
  --like        of a part: takes it over from one of the catalogue and asks only what differs; of a vehicle:
                takes its spaces, places, ways and what is fitted, each to be held against the new one
  --flags       lists the flags of what is asked for, with an example of each; of a part by its --kind
  --vehicle     may be left out where the shop has only one; so may --space
  --like        of a job: takes over parts, places, outputs, settings and, where it can, links of another,
                and leaves out what is of that job alone: customer, readings, photos, acceptances, serial
                numbers, and what this vehicle does not have. Comments tell what; the file reads at once.
                Without --vehicle it is the vehicle of the other job
  --issued-on   date of the first issue, such as 2026-02-09; the default is today`,
  bench: `rackleaf bench [--part PART ...] [--longest] [--json]
rackleaf bench --against COMMIT [--part PART ...] [--rounds 3] [--job JOB] [--json]

Measures solving, placing, routing, drawing and building against one another on this machine.
  --against     this tree over another commit of it, from cold, in user time of the processor
  --part        solve, board, job, serve, diagrams; with --against help, check, build, draw, board; without it all
  --longest     in a checkout, searches the boards of the tests for minutes, for the fewest crossings
  --rounds      how often each is run; the least time counts
  --job         the job that is checked; the default is the one of the longest file`,
  keep: `rackleaf keep JOB [places] [ports] [links] [settings] [labels] [--yes]
rackleaf keep JOB links.NAME|labels.NAME ... [--yes]

Writes what the plan proposes into the job file, all of it or by kind, with comments and order left alone.
What is written no longer moves when something else is changed. The change is shown first, line by line.
  places        where boards and devices stand, their fixings, the sheet of a board
  ports         which of several like ports a link takes
  links         links, holders, cables, runs, and what stays open
  settings      of controls before first power-up; filters that rules propose
  labels        of wires
  links.NAME    one link alone, with the holder at its end or the cable that it can't be written without;
                so of each kind, such as labels.NAME and places.DEVICE
  --yes         writes it without a question`,
  release: `rackleaf release JOB

Freezes the plan of the job's revision beside the job, unless a finding stops it.`,
  packet: `rackleaf packet JOB [--to FOLDER] [--json]

Writes what the owner takes home: one HTML file that opens from a memory stick and asks for nothing outside
it, and the same as PDF, which needs a browser. Refused for a draft, with a stop, with a reading out of its
limits or not taken. It holds the owner's name, plate and serial numbers: give it to nobody else.
  --to          the folder; the default is .rackleaf/export/JOB/REVISION`,
  estimate: `rackleaf estimate JOB [--to FOLDER] [--json]

What a job comes to at the counter, for the shop alone: parts by prices: of the shop file, for as much as is
taken; hours by the order of work and times:, at the rate under estimate:, with what is put on parts and tax
where the shop states them; beside it what was worked, by hours: of the job. Each line is rounded up to the
smallest unit of the currency. A part without a price is named and not counted: the total is then at least
that much. Parts that the customer brings, or the vehicle has, cost nothing.
  --to          also writes the sheet there: one HTML file that prints on one page
  --json        the whole estimate; amounts in smallest units of the currency, with how each came about`,
  import: `rackleaf import TABLE.csv [--write]

Brings stock and prices of content/shop.yaml to what a table says, with its comments and its order left
alone. An empty field, and a part that the table leaves out, stay as they are.

The columns:
  part          the part by its id
  pieces        how many; reels: 50 ft; 8 ft, or none; off-cuts: c1: 6 ft, of a sheet a1: 20 in x 14 in
  price         the number alone; per: each, 100, ft, m or 50 ft; currency: that of the shop file
Fields may be parted by commas, semicolons or tabs. What is not understood is told with line, column and
what to write, and left out.
  --write       writes what is otherwise only shown`,
  export: `rackleaf export JOB [--format FORMAT ...] [--to FOLDER] [--sheets bench] [--json]
                [--units mm|inch] [--paper letter|a4] [--label-stock SIZES]
rackleaf export JOB JOB ... [--to FOLDER] [--json] [--units mm|inch] [--paper letter|a4]
rackleaf export --stock [--to FOLDER]
rackleaf export --orders [--to FOLDER]

Writes files of a job for other programs, machines and printers; without --format all but the packet.
Of several jobs it writes the nest: the pieces of all of them together on stock sheets.
  --format      svg       each drawing, stand-alone
                cut       each board at 1:1 for a router or laser, SVG
                dxf       the same as DXF, layers CUT, DRILL, ENGRAVE
                labels    wire labels on label stock, SVG; two for each end
                template  each board at full size, tiled on paper, HTML
                nest      boards, rails and pads on stock sheets, SVG, DXF and CSV
                csv       every table (RFC 4180); a text that begins with = + - @
                          has an apostrophe before it, so that nothing is computed
                pdf       the sheet set with bookmarks; needs a browser
                packet    the packet of the owner, PDF; made only where it is asked for, and refused
                          as rackleaf packet refuses it
  --to          the folder; the default is .rackleaf/export/JOB/REVISION, of several jobs
                .rackleaf/export/nest
  --stock       what lies on the shelf and what is paid for it, as a table that rackleaf import takes back
  --orders      what all jobs that are not built in yet take together and the shelf lacks, with the shop's
                prices: for the shop alone
  --sheets      bench: a short set as PDF, of the sheets that lie on the bench while the board is
                built: cut and drill, placement, wiring, wire list, order of work, presets, test
  --units       of DXF; the default is the shop's
  --paper       of templates and labels; the default is the shop's
  --label-stock sizes of the label sheet: columns=4, rows=20, width=1 3/4 in, height=1/2 in,
                left=0.3 in, top=1/2 in, pitch-x=2.05 in, pitch-y=1/2 in; any of them
Names of files bear the job and its revision, and begin with DRAFT until it is released; so do
the files inside, each row of a table too. No file but the packet holds a private value.`,
};

const statuses = `Exit status: 0 done; 1 a job has a stop finding; 2 the input has errors; 3 something outside is missing.`;

/** The help of the whole program. */
export function generalHelp(): string {
  const lines = Object.values(texts).map((text) =>
    text.split('\n\n').map((part) => part.replace(/\n {2}.*$/gms, '')),
  );
  const rows = lines.map(([usage = '', what = '']) => `${usage}\n    ${what}`);
  return ['Rackleaf: install build sheets from a job file.', ...rows, statuses].join('\n\n');
}

/** The help of one command. */
export function commandHelp(name: string): string {
  return `${texts[name] ?? ''}\n\n${statuses}`;
}
