package main

import (
	"flag"
	"fmt"
	"slices"
	"strings"
)

// A command is one word of the command line.
type command struct {
	name, words string
	least, most int    // how many words; below 0, what stands behind it has options of its own
	options     string // that it takes beside -db
	short       string
	long        string
	example     string
	run         func(*call) error
}

func (cmd *command) takes(option string) bool {
	return slices.Contains(strings.Fields(cmd.options), option)
}

// own tells whether the command reads its options itself.
func (cmd *command) own() bool { return cmd.most < 0 }

// usage is the command with its words.
func (cmd *command) usage() string { return strings.TrimSpace(cmd.name + " " + cmd.words) }

func find(name string) *command {
	for i, cmd := range commands() {
		if cmd.name == name {
			return &commands()[i]
		}
	}
	return nil
}

// commands are in the order of the help.
func commands() []command {
	return []command{
		{"demo", "[-out DIR]", 0, 0, "out paper", "one night from first tap to last, without touching your file",
			"Plays the demo scene in a file of its own, which is gone afterwards, and tells it: who did what, what the log answered, then the lists that people read. With -out the tables are written to a folder as CSV and the papers as PDF. Everything in the demo is invented.",
			"tarpline demo | less", (*call).demo},
		{"stores", "load DIR|FILE.xlsx | save DIR|FILE.xlsx", 2, 2, "dry by csv", "the inventory: rigs, slots, pieces, checks, people",
			"load changes the inventory to what the CSV tables of a folder say, or the sheets of an XLSX workbook; the first time it makes the department file. One bad row stops all of it, and every bad row is named. With -dry it only says what would change. save writes the tables to a folder, or to a workbook. A cell that a spreadsheet would compute is written as text.",
			"tarpline stores load ./tables -dry", (*call).stores},
		{"replay", "SCENE.csv|-", 1, 1, "until replies start", "logs the rows of a scene file",
			"Logs each row as one act, in the order of seq, and counts the replies. A mistake in the file stops it before the first row is logged, and every bad row is named. A refused act is no mistake: it is the reply. With -replies each row's reply is written as soon as the row is safe on disk. Minute 0 is the first row's clock, today or yesterday, or what -start says.",
			"tarpline replay scene.csv -until 60 -replies replies.csv", (*call).replay},
		{"enter", "SHEET.csv|-", 1, 1, "dry by", "logs what was written on paper while there was no tablet",
			"The table has the columns of the tarp sheet: time, quantity, piece, to, who; and where they help rig and from. The time is the clock's, 19:42, or the minute of the scene. What cannot be read any more is ? or unknown. Each line goes to its minute and is marked as from paper; what contradicts the log stands beside it as a claim, and nothing that was logged is changed. One line that cannot be right stops all of it, and every one is named. With -dry it only says what it would log.",
			"tarpline enter sheet.csv -by M04 -dry", (*call).enter},
		{"where", "", 0, 0, "csv", "every piece that is not home, and who has it",
			"Lists each line and place, with what is in kits. The place is where the outermost kit is.",
			"tarpline where", (*call).where},
		{"glance", "", 0, 0, "csv", "what is deployed, place by place",
			"For the officer: each place with its tools, the most needed first, and what the rigs could not do if they were sent now.",
			"tarpline glance", (*call).glance},
		{"loadup", "RIG", 0, 1, "rig csv", "the order in which a rig is loaded",
			"One lap round the rig, deep before shallow, opening each door as few times as the stow rules allow.",
			"tarpline loadup R41", (*call).loadup},
		{"leaving", "RIG", 0, 1, "rig csv", "what a rig that goes now leaves behind",
			"The open list that is signed before a rig goes: its pieces that are not home, and what it carries for others.",
			"tarpline leaving E42", (*call).leaving},
		{"ready", "", 0, 0, "csv", "what a rig could not do if it were sent now",
			"Families of tools with a critical line and fewer ready than there are.",
			"tarpline ready", (*call).ready},
		{"restock", "", 0, 0, "csv", "what to replace, from where, and what to order",
			"Adds up what was used, lost or spoiled, by line of the station's store.",
			"tarpline restock -csv > restock.csv", (*call).restock},
		{"bringback", "", 0, 0, "csv", "what others have of ours, and what rides on another rig",
			"The list to telephone with after the scene.",
			"tarpline bringback", (*call).bringback},
		{"sums", "[SUM [OPTIONS]]", 0, -1, "", "one figure worked out, with its formula and source: oxygen, lifts, a carry, a search",
			"Without a name it lists the sums. Each works out one figure and says how: its range, its formula, where that comes from and what it leaves out. It needs no department file. tarpline sums help oxygen explains one sum. An estimate for planning: the gauge, your own rules and your officer come first.",
			"tarpline sums oxygen -cylinder D -psi 1950 -flow 15 -then 600@20", (*call).sums},
		{"proof", "", 0, 0, "csv", "the trial balance: every piece is somewhere",
			"A row for each line with its pieces over the kinds of place; in each row they add up to what the rig owns. Then the balance of the scene, and of each rig.",
			"tarpline proof", (*call).proof},
		{"journal", "", 0, 0, "", "the log as a double-entry journal, for bookkeeping programs",
			"Writes every entry as a transaction that hledger and ledger read: an account is a place, a commodity is an item, and what a rig owns comes from owner:RIG. Their balances are those of proof.",
			"tarpline journal > scene.journal", (*call).journal},
		{"papers", "-out DIR", 0, 0, "out rig paper", "everything on paper: lists to sign, slips, labels",
			"Writes PDF files for the board as it is now: for each rig, or only for -rig, its slot sheets, put-back list, open list, release slip, QR and bar labels; and for the scene the tarp sheet to go on with by hand, the close-out on one page, restock, out-of-service labels, lost reports and activity log. Files of the same names are replaced.",
			"tarpline papers -out papers -rig R41 -paper a4", (*call).papers},
		{"verify", "", 0, 0, "csv", "checks the department file from end to end",
			"Reads the whole file, folds the log again from its first entry and compares. Exits 1 if anything is wrong.",
			"tarpline verify", (*call).verify},
		{"backup", "FILE", 1, 1, "", "a safe copy, even while the log is in use",
			"Writes a checked copy of the department file under a name that is not taken.",
			"tarpline backup /media/stick/department-2026-11-25.db", (*call).backup},
		{"stick", "save FILE | load FILE", 2, 2, "", "takes the log to another tablet, by stick or cable",
			"save writes the whole log to one file with a check sum. load takes such a file in: all of it, or nothing if it is damaged, foreign or of another department. The same file again changes nothing, and two tablets that exchange files show the same board.",
			"tarpline stick save /media/stick/bridge.tarpside", (*call).stick},
		{"pin", "clear", 1, 1, "", "takes a forgotten officer's PIN away",
			"The window asks for the officer's PIN where one is set. It is kept as a salted hash and cannot be read back: a forgotten one is taken away here, and a new one set under Settings.",
			"tarpline pin clear", (*call).pin},
		{"restore", "FILE", 1, 1, "replace", "puts a backup in the place of the department file",
			"Checks the backup, then puts a copy of it where the department file is. A file that is there is never overwritten: with -replace it is moved aside first, to a name with the time in it. The restored file is a tablet of its own to the others.",
			"tarpline restore /media/stick/department-2026-11-25.db -replace", (*call).restore},
	}
}

// overview is the help for a newcomer.
func overview() string {
	var b strings.Builder
	b.WriteString("tarpline is Tarpside from a terminal: what came off which rig onto the tarp, who took it where,\n" +
		"and the put-back of everything.\n\nStart with\n\n    tarpline demo | less              a whole night, told\n" +
		"    tarpline stores load DIR          make your department file of your tables\n\nCommands\n\n")
	for _, cmd := range commands() {
		fmt.Fprintf(&b, "    %-10s %s\n", cmd.name, cmd.short)
	}
	b.WriteString("\nOptions for all of them\n\n" +
		"    -db FILE   the department file; without it the one in your data folder\n" +
		"    -csv       print a table as CSV, for a spreadsheet or a script\n" +
		"    -h         explain the command: tarpline loadup -h, or tarpline help loadup\n\n" +
		"Lists can be read while the window is open. It exits 0, or 1 if something went wrong, or 2 if it was\n" +
		"asked in a way that it does not understand.\n")
	return b.String()
}

// explain prints the help of a command, or of all.
func (c *call) explain(name string) error {
	if name == "" || name == "help" {
		c.out.WriteString(overview())
		return nil
	}
	cmd := find(name)
	if cmd == nil {
		return misuse(fmt.Sprintf("there is no command %q; try: tarpline help", name))
	}
	fmt.Fprintf(c.out, "tarpline %s\n%s\n\n", cmd.usage(), cmd.short)
	for _, line := range wrap(cmd.long, width-4) {
		fmt.Fprintf(c.out, "    %s\n", line)
	}
	if cmd.own() {
		c.out.WriteString("\nSums\n\n")
		for _, s := range sums() {
			for _, line := range hang(fmt.Sprintf("    %-10s ", s.name), s.short) {
				fmt.Fprintln(c.out, line)
			}
		}
		fmt.Fprintf(c.out, "\nExample\n\n    %s\n", cmd.example)
		return nil
	}
	fmt.Fprintf(c.out, "\nOptions\n\n")
	f := c.flags()
	for _, o := range append(strings.Fields(cmd.options), "db") {
		word, usage := flag.UnquoteUsage(f.Lookup(o))
		fmt.Fprintf(c.out, "    %-16s %s\n", strings.TrimSpace("-"+o+" "+word), usage)
	}
	fmt.Fprintf(c.out, "\nExample\n\n    %s\n", cmd.example)
	return nil
}
