package ui

import (
	"errors"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board/stores"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// Folder is a folder as it is shown to choose from.
type Folder struct {
	Path   string   // of itself
	Up     string   // of the one it lies in, "" at the top
	Inside []string // paths of the folders in it
	Tables int      // tables of a department in it
	Sticks []string // paths of logs that other tablets wrote

	Workbook bool // it is a workbook, with the tables as its sheets
}

// welcomeScreen is the Tarp of a file without a department: load one, or look
// at the demo.
type welcomeScreen struct {
	sh    *Shell
	words *parts.Label
	about *parts.Panel
	load  *parts.Key
	demo  *parts.Key
	strip *parts.Strip
	root  *fyne.Container
}

var welcomeWords = words.K("This log knows no piece yet. Load the tables of your department, or look at the demo first: a copy that is thrown away.\n\n" +
	"The tables are plain CSV files in one folder, or the sheets of one workbook (.xlsx): rigs, slots, items and checks, and as far as you have them stow rules, members, agencies, places, stock and pull lists. " +
	"Before anything is loaded you see what would come in, and every row that is not right. What another tablet logged comes in by stick: More, Paper and stick.")

func newWelcome(sh *Shell) *welcomeScreen {
	w := &welcomeScreen{sh: sh}
	w.words = parts.NewLines(parts.LabelView{ID: "welcome", Role: look.Open, Text: words.L(welcomeWords)})
	w.about = parts.NewPanel(parts.PanelView{Title: words.L("Before you rely on it"), Rule: true}, parts.NewScroller(parts.NewLines(parts.LabelView{ID: "about", Role: look.Sentence, Text: words.L(aboutWords)})))
	w.load = parts.NewKey(parts.KeyView{}, func() { sh.open(newLoading(sh)) })
	w.demo = parts.NewKey(parts.KeyView{}, sh.toDemo)
	w.strip = parts.NewStrip(parts.StripView{}, func(string) { sh.said = nil; sh.refresh() })
	w.root = box(func(size fyne.Size) {
		gap, h := look.U(look.Gap), look.U(look.Floor)
		left := (size.Width - 2*gap) * 0.6
		end := size.Height - h - gap
		place(w.strip, 0, end+gap, size.Width, h)
		keyH := look.U(140)
		place(w.words, look.U(12), 0, left-look.U(12), end-keyH-gap)
		kw := (left - gap) / 2
		place(w.load, 0, end-keyH, kw, keyH)
		place(w.demo, kw+gap, end-keyH, kw, keyH)
		place(w.about, left+2*gap, 0, size.Width-left-2*gap, end)
	}, w.words, w.about, w.load, w.demo, w.strip)
	return w
}

func (w *welcomeScreen) body() fyne.CanvasObject { return w.root }

func (w *welcomeScreen) show(n *now) head {
	can := n.opts.Folders != nil && n.opts.LoadFrom != nil && n.pic.ReadOnly == ""
	w.load.Set(parts.KeyView{ID: "load-department", Title: words.L("Load a department"), Second: words.L("from a folder or a workbook"), Icon: "in", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Name, Off: !can})
	w.demo.Set(parts.KeyView{ID: "demo", Title: words.L("Look at the demo"), Second: words.L("invented; nothing is kept"), Icon: "glance", Lay: parts.LayLeft, Role: look.Name, Off: n.opts.Demo == nil})
	v := n.stripView(nil)
	if n.said == nil && n.pic.ReadOnly == "" {
		v.Title, v.Second = words.L("Nothing can be logged yet"), words.L("No piece is known.")
	}
	w.strip.Set(v)
	return head{title: words.L("Tarpside"), sentence: words.L("No department is loaded")}
}

// toDemo leaves for the practice copy of the demo.
func (sh *Shell) toDemo() {
	if sh.opts.Demo == nil {
		return
	}
	if err := sh.opts.Demo(); err != nil {
		sh.said = &said{trouble: inWords(err)}
		sh.refresh()
	}
}

// needsPieces are the screens that say nothing true while no piece is known:
// "nothing is open" would be signed for a rig that is not there.
var needsPieces = map[string]bool{
	ScreenTarp: true, ScreenGlance: true, ScreenLoadUp: true, ScreenLeaving: true,
	ScreenLookFor: true, ScreenTrail: true, ScreenBringBack: true,
}

// empty tells that no department is loaded.
func (sh *Shell) empty() bool {
	d := sh.pic.State.Dept
	return len(d.Items) == 0 && len(d.Rigs) == 0
}

// loading chooses the folder of tables, shows what would change and every
// row that is not right, and loads on yes.
type loading struct {
	sh     *Shell
	folder Folder
	tried  bool     // the tables of the folder were looked through
	rows   []string // what would change, or what is not right
	good   bool
	says   string
	list   *parts.Column
	scroll *parts.Scroller
	keep   map[string]*parts.Row
	found  *parts.Label
	reads  *parts.Scroller
	panel  *parts.Panel
	up     *parts.Key
	try    *parts.Key
	yes    *parts.Key
	root   *fyne.Container
}

func newLoading(sh *Shell) *loading {
	l := &loading{sh: sh, keep: map[string]*parts.Row{}}
	l.list = parts.NewColumn(look.Gap)
	l.scroll = parts.NewScroller(l.list)
	l.found = parts.NewLines(parts.LabelView{ID: "found", Role: look.Body})
	l.reads = parts.NewScroller(l.found)
	l.panel = parts.NewPanel(parts.PanelView{}, l.reads)
	l.up = parts.NewKey(parts.KeyView{}, func() { l.enter(l.folder.Up) })
	l.try = parts.NewKey(parts.KeyView{}, l.look)
	l.yes = parts.NewKey(parts.KeyView{}, l.load)
	l.root = box(l.layout, l.scroll, l.panel, l.up, l.try, l.yes)
	l.read("")
	return l
}

func (l *loading) body() fyne.CanvasObject { return l.root }

func (l *loading) layout(size fyne.Size) {
	gap, h := look.U(look.Gap), look.U(96)
	left := (size.Width - gap) * 0.42
	place(l.up, 0, 0, left, h)
	flush(l.scroll, 0, h+gap, left, size.Height-2*(h+gap))
	place(l.try, 0, size.Height-h, left, h)
	place(l.panel, left+gap, 0, size.Width-left-gap, size.Height-h-gap)
	place(l.yes, left+gap, size.Height-h, size.Width-left-gap, h)
}

// enter goes into a folder.
func (l *loading) enter(dir string) {
	l.read(dir)
	l.sh.refresh()
}

func (l *loading) read(dir string) {
	f, err := l.sh.opts.Folders(dir)
	l.tried, l.good, l.rows, l.says = false, false, nil, ""
	if err != nil {
		l.says = words.F("That folder cannot be read: %s. Nothing was changed; choose another one.", words.Said(err.Error()))
		return
	}
	l.folder = f
	l.scroll.ScrollToOffset(0)
}

// look says what loading the folder would change.
func (l *loading) look() {
	rows, err := l.sh.opts.LoadFrom(l.folder.Path, l.sh.by, true)
	l.tell(rows, err)
	l.good = err == nil && len(rows) > 0
	if err == nil {
		l.says = words.L("This would come in. Nothing is loaded yet.")
		if len(rows) == 0 {
			l.says = words.L("The inventory is as these tables say already.")
		}
	}
	l.sh.refresh()
}

// tell keeps what a trial or a load had to say.
func (l *loading) tell(rows []string, err error) {
	l.tried, l.good, l.rows = true, false, rows
	var bad stores.Problems
	switch {
	case errors.As(err, &bad):
		l.says, l.rows = words.F("%s to mend. Nothing was changed.", words.N("%d thing", "%d things", len(bad))), nil
		for _, p := range bad {
			l.rows = append(l.rows, p.String())
		}
	case err != nil:
		l.says, l.rows = words.F("Nothing was changed. %s", words.Said(err.Error())), nil
	}
}

// load loads the folder that was looked through.
func (l *loading) load() {
	rows, err := l.sh.opts.LoadFrom(l.folder.Path, l.sh.by, false)
	l.sh.catchUp()
	if err != nil {
		l.tell(rows, err)
		l.sh.refresh()
		return
	}
	l.sh.Go(ScreenStores)
}

// mostRows is how many rows are written out; more than that nobody reads at
// once, and each table is counted before them.
const mostRows = 60

// show brings the folders and what was found up to date.
func (l *loading) show(n *now) head {
	up := parts.KeyView{ID: "up", Title: words.L("Up"), Second: words.F("out of %s", filepath.Base(l.folder.Path)), Icon: "up", Lay: parts.LayLeft, Off: l.folder.Up == ""}
	l.up.Set(up)
	var objs []fyne.CanvasObject
	for _, dir := range l.folder.Inside {
		row := l.keep[dir]
		if row == nil {
			row = parts.NewRow(parts.RowView{ID: "folder-" + filepath.Base(dir), Title: filepath.Base(dir), Tone: parts.Quiet, Go: "go"}, func() { l.enter(dir) })
			l.keep[dir] = row
		}
		objs = append(objs, row)
	}
	l.list.SetInside(objs...)
	l.scroll.Settle()
	title, second, some := words.L("Look through this folder"), words.F("%s in it", words.N("%d table", "%d tables", l.folder.Tables)), l.folder.Tables > 0
	if l.folder.Workbook {
		title, second, some = words.L("Look through this workbook"), words.L("each sheet is a table"), true
	}
	l.try.Set(parts.KeyView{ID: "look-through", Title: title, Second: second, Icon: "look", Lay: parts.LayLeft, Role: look.Group, Off: !some,
		Tone: map[bool]parts.Tone{true: parts.Filled}[some && !l.tried]})
	yes := parts.KeyView{ID: "load-yes", Title: words.L("Yes, load it"), Second: words.L("one entry of the log"), Icon: "tick", Lay: parts.LayLeft, Role: look.Name, Off: !l.good}
	if l.good {
		yes.Tone = parts.Filled
	}
	l.yes.Set(yes)
	v := parts.PanelView{Title: words.L("What is in it"), Rule: true}
	if l.tried && !l.good && len(l.rows) > 0 {
		v.Title, v.Tone = words.L("Not right yet"), parts.Alarm
	}
	l.panel.Set(v)
	l.found.SetText(l.words())
	l.reads.Settle()
	return head{title: words.L("Load a department"), sentence: l.folder.Path, back: true}
}

func (l *loading) words() string {
	if l.says == "" {
		switch {
		case l.folder.Workbook:
			return words.L("Look through the workbook first. Nothing is loaded by that.")
		case l.folder.Tables == 0:
			return words.L("No table of a department lies in this folder. Go into the one that has rigs.csv, slots.csv, items.csv and checks.csv in it, or into a workbook (.xlsx) with these as its sheets.")
		}
		return words.L("Look through the folder first. Nothing is loaded by that.")
	}
	rows, more := l.rows, ""
	head := parts.B(l.says) + "\n" + countedTables(rows)
	if len(rows) > mostRows {
		more = words.F("\nand %d more.", len(rows)-mostRows)
		rows = rows[:mostRows]
	}
	for _, row := range rows {
		if l.sh.empty() {
			row = newRow(row)
		}
		head += words.Said(row) + "\n"
	}
	return strings.TrimSpace(strings.TrimSpace(head) + more)
}

// newRow is a row of a first load, in which all is new: which, and its name.
func newRow(row string) string {
	which, cells, ok := strings.Cut(row, " is new: ")
	if !ok {
		return row
	}
	for _, column := range []string{"name", "description"} {
		if _, rest, ok := strings.Cut(cells, column+` "`); ok {
			name, _, _ := strings.Cut(rest, `"`)
			return which + ", " + name
		}
	}
	return which
}

// countedTables says how many rows of each table are named, where that is
// more than can be read at once.
func countedTables(rows []string) string {
	if len(rows) <= mostRows {
		return ""
	}
	var names []string
	count := map[string]int{}
	for _, r := range rows {
		if _, sheet, ok := strings.Cut(r, ", sheet "); ok {
			r = sheet
		}
		table := strings.TrimSuffix(r[:strings.IndexAny(r+":", ":,")], ".csv")
		if count[table]++; count[table] == 1 {
			names = append(names, table)
		}
	}
	out := ""
	for _, t := range names {
		out += words.F("%s of %s\n", words.N("%d row", "%d rows", count[t]), strings.ReplaceAll(t, "_", " "))
	}
	return out
}
