package stores_test

import (
	"bytes"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tarpside/board/stores"
)

// spoil changes the demo tables: each edit is file, old text, new text. An
// empty old text adds the new text at the end; no new text takes out the old.
func spoil(t *testing.T, edits [][3]string) fstest.MapFS {
	t.Helper()
	files := demoFiles(t)
	for _, e := range edits {
		f := files[e[0]+".csv"]
		if e[1] == "" {
			f.Data = append(slices.Clone(f.Data), e[2]...)
			continue
		}
		if bytes.Count(f.Data, []byte(e[1])) != 1 {
			t.Fatalf("%q is in %s %d times", e[1], e[0], bytes.Count(f.Data, []byte(e[1])))
		}
		f.Data = bytes.Replace(f.Data, []byte(e[1]), []byte(e[2]), 1)
	}
	return files
}

const (
	wholeTo   = "a whole number from 0 to 1000000"
	numberTo  = "a number from 0 to 1000000"
	twoDoors  = "pieces behind exactly two doors (compartment and lap)"
	inASlot   = "a line that lives in a slot"
	notUTF8   = "bytes that are not UTF-8"
	anEnd     = "an order that comes to an end"
	overrides = "officer, never, or officer, never when WORD"
	answers   = "number LOW-HIGH, or words with yes among them such as yes/no"
)

func TestEveryBadCellIsNamedWithWhatWouldBeRight(t *testing.T) {
	type edits = [][3]string
	type want = stores.Problems
	for _, c := range []struct {
		name  string
		edits edits
		want  want
	}{
		{"header: a column missing", edits{{"rigs", "seats", "chairs"}},
			want{{"rigs.csv", 1, "seats", "the column is missing", "a column seats"}}},
		{"header: a column twice", edits{{"places", "place,meaning", "place,place,meaning"}, {"places", "V1,", "V1,,"}, {"places", "V2,", "V2,,"}, {"places", "BANK,", "BANK,,"}, {"places", "ROAD,", "ROAD,,"}},
			want{{"places.csv", 1, "place", "the column is there twice", "each column once"}}},
		{"header: no keys, and no reference is judged", edits{{"agencies", "agency,name", "code,name"}},
			want{{"agencies.csv", 1, "agency", "the column is missing", "a column agency"}}},
		{"cells: too many", edits{{"places", "traffic line", "traffic line,x"}},
			want{{"places.csv", 5, "", "3 cells", "2 cells, as in the header"}}},
		{"cells: too few, told once though others refer to the row", edits{{"slots", ",R41,cab front,cab,cab front rack,60,0,0", ",R41"}},
			want{{"slots.csv", 2, "", "2 cells", "8 cells, as in the header"}}},
		{"cells: under no name", edits{{"places", "place,meaning", "place,meaning,"}, {"places", "on the road", "on the road,"}, {"places", "down the bank", "down the bank,?"}, {"places", `light point"`, `light point",`}, {"places", "line", "line,"}},
			want{{"places.csv", 3, "", `"?" stands in a column without a name`, "a name for the column in row 1"}}},
		{"rows: empty ones count", edits{{"places", "V2,", "\r\n,\r\nV2;,"}},
			want{{"places.csv", 5, "place", `"V2;" has a quote or a semicolon in it`, "an id without them"}}},
		{"quotes: never closed, and no reference is judged", edits{{"agencies", `"Quillan County Ambulance, Medic 9"`, `"Quillan County Ambulance, Medic 9`}},
			want{{"agencies.csv", 4, "name", "a quote is opened and never closed", "a closing quote; inside quotes a quote is written twice"}}},
		{"quotes: in a plain cell", edits{{"stock", "Dust mask", `Dust 6" mask`}},
			want{{"stock.csv", 3, "name", "a quote inside a cell that is not quoted", "the whole cell in quotes, and each quote in it written twice"}}},
		{"letters: not UTF-8", edits{{"members", "Hanneke Doyle", "Hanneke Do\xffle"}},
			want{{"members.csv", 8, "name", notUTF8, "the file saved as CSV UTF-8"}}},

		{"id: blank", edits{{"places", "V1,", ","}}, want{{"places.csv", 2, "place", "blank", "an id of its own"}}},
		{"id: a blank before it", edits{{"places", "V1,", " V1,"}}, want{{"places.csv", 2, "place", `" V1" has a blank before or after it`, `"V1"`}}},
		{"id: a quote", edits{{"places", "V1,", `"V""1",`}}, want{{"places.csv", 2, "place", `"V\"1" has a quote or a semicolon in it`, "an id without them"}}},
		{"id: a control character", edits{{"places", "V1,", "V\x1f1,"}},
			want{{"places.csv", 2, "place", `"V\x1f1" has a character in it that cannot be seen`, "an id of letters, digits and signs"}}},
		{"id: no-width space", edits{{"places", "V1,", "V\u200b1,"}},
			want{{"places.csv", 2, "place", `"V\u200b1" has a character in it that cannot be seen`, "an id of letters, digits and signs"}}},
		{"id: twice", edits{{"stock", "ST22,", "ST21,"}, {"items", "0.3,R41-021,,,no,no,yes,yes,1,3,ST22,", "0.3,R41-021,,,no,no,yes,yes,1,3,ST21,"}},
			want{{"stock.csv", 23, "stock", `"ST21" is in row 22 already`, "an id of its own"}}},
		{"id: another case is another id", edits{{"places", "V2,", "v1,"}}, nil},
		{"id: a check with a sign of the readings", edits{{"checks", "", "lid=on,Lid on,yes/no,yes,,officer\r\n"}},
			want{{"checks.csv", 17, "check", `"lid=on" has one of < > = in it`, "an id without them"}}},
		{"id: a check that is a word of the readings", edits{{"checks", "", "Unused,Was it used?,yes/no,yes,,officer\r\n"}},
			want{{"checks.csv", 17, "check", `"Unused" is a word of the readings`, "another id"}}},
		{"id: each word of the readings", edits{{"checks", "", "flow,Q,yes/no,,,never\r\nas_is,Q,yes/no,,,never\r\nin_anyway,Q,yes/no,,,never\r\n"}},
			want{{"checks.csv", 17, "check", `"flow" is a word of the readings`, "another id"},
				{"checks.csv", 18, "check", `"as_is" is a word of the readings`, "another id"},
				{"checks.csv", 19, "check", `"in_anyway" is a word of the readings`, "another id"}}},
		{"id: checks that differ in case", edits{{"checks", "", "Dry,Is it dry?,yes/no,yes,,officer\r\n"}},
			want{{"checks.csv", 17, "check", `"Dry" differs from "dry" in its case only`, "an id of its own"}}},

		{"number: a word", edits{{"items", "R41-L1-T,piece,1,ea,46,", "R41-L1-T,piece,1,ea,heavy,"}},
			want{{"items.csv", 2, "weight_lb", `"heavy" is not a number`, numberTo}}},
		{"number: not a number", edits{{"items", "R41-L1-T,piece,1,ea,46,", "R41-L1-T,piece,1,ea,NaN,"}},
			want{{"items.csv", 2, "weight_lb", `"NaN" is not a number`, numberTo}}},
		{"number: endless", edits{{"items", "R41-L1-T,piece,1,ea,46,", "R41-L1-T,piece,1,ea,Inf,"}},
			want{{"items.csv", 2, "weight_lb", `"Inf" is not a number`, numberTo}}},
		{"number: a power", edits{{"items", "R41-L1-T,piece,1,ea,46,", "R41-L1-T,piece,1,ea,1e3,"}},
			want{{"items.csv", 2, "weight_lb", `"1e3" is not a number`, numberTo}}},
		{"number: thousands or a fraction", edits{{"items", "R41-L1-T,piece,1,ea,46,", `R41-L1-T,piece,1,ea,"4,600",`}},
			want{{"items.csv", 2, "weight_lb", `"4,600" can be read in two ways`, "4600 or 4,60"}}},
		{"number: too large", edits{{"items", "R41-L1-T,piece,1,ea,46,", "R41-L1-T,piece,1,ea,1000000.5,"}},
			want{{"items.csv", 2, "weight_lb", `"1000000.5" is too large`, numberTo}}},
		{"number: negative weight", edits{{"items", "R41-L1-T,piece,1,ea,46,", "R41-L1-T,piece,1,ea,-46,"}},
			want{{"items.csv", 2, "weight_lb", `"-46" is below zero`, numberTo}}},
		{"number: negative quantity", edits{{"items", "Wedge 4x4,,,R41,R41-L3-B,counted,24,", "Wedge 4x4,,,R41,R41-L3-B,counted,-24,"}},
			want{{"items.csv", 60, "quantity", `"-24" is below zero`, wholeTo}}},
		{"number: half a piece", edits{{"items", "Wedge 4x4,,,R41,R41-L3-B,counted,24,", "Wedge 4x4,,,R41,R41-L3-B,counted,24.5,"}},
			want{{"items.csv", 60, "quantity", `"24.5" is not a whole number`, wholeTo}}},
		{"number: blank where there must be one", edits{{"items", "Wedge 4x4,,,R41,R41-L3-B,counted,24,", "Wedge 4x4,,,R41,R41-L3-B,counted,,"}},
			want{{"items.csv", 60, "quantity", "blank", "how many there are"}}},
		{"number: a pack of none", edits{{"stock", "ST22,Spring punch,1,0.05,0.2,3,2", "ST22,Spring punch,1,0.05,0.2,3,0"}},
			want{{"stock.csv", 23, "pack", `"0" is too small`, "a whole number from 1 to 1000000"}}},
		{"number: on a pull list", edits{{"pull_lists", "Staging tarp,1,must,any,\r\nCar extrication,R41-001", "Staging tarp,one,must,any,\r\nCar extrication,R41-001"}},
			want{{"pull_lists.csv", 2, "quantity", `"one" is not a number`, wholeTo}}},
		{"yes or no: neither", edits{{"members", `"Chief, incident command",yes`, `"Chief, incident command",true`}},
			want{{"members.csv", 2, "officer", `"true" is neither yes nor no`, "yes or no"}}},
		{"name: blank", edits{{"rigs", "Rescue 41", ""}}, want{{"rigs.csv", 2, "name", "blank", "a name"}}},

		{"kind: unknown", edits{{"items", "Wedge 4x4,,,R41,R41-L3-B,counted,24,", "Wedge 4x4,,,R41,R41-L3-B,lot,24,"}},
			want{{"items.csv", 60, "kind", `"lot" is no kind of line`, "piece, counted, consumable or kit"}}},
		{"quantity: a number on a marked piece", edits{{"items", "R41-L1-T,piece,1,ea,46,", "R41-L1-T,piece,2,ea,46,"}},
			want{{"items.csv", 2, "quantity", "2 of a marked piece", "1; a number belongs to a line of kind counted or consumable"}}},
		{"quantity: two kits in one line", edits{{"items", "R41-L1-S,kit,1,ea,4,,count,chainbox", "R41-L1-S,kit,2,ea,4,,count,chainbox"}},
			want{{"items.csv", 18, "quantity", "2 kits in one line", "1; each kit has a line of its own"}}},
		{"least usable: more than there are", edits{{"items", "1.5,,clean,wedge4,yes,no,no,no,16,", "1.5,,clean,wedge4,yes,no,no,no,25,"}},
			want{{"items.csv", 60, "least_usable", "25 is more than the 24 there are", "a whole number from 0 to 24, or blank for all"}}},
		{"family: blank on a critical line", edits{{"items", "46,,function;edge;clean,spreader,", "46,,function;edge;clean,,"}},
			want{{"items.csv", 2, "family", "blank on a critical line", "the family that it counts for"}}},
		{"short name: too long", edits{{"items", "Hydraulic power unit,Power unit,", "Hydraulic power unit,The power unit 2000,"}},
			want{{"items.csv", 304, "short_name", `"The power unit 2000" has 19 characters`, "18 at most"}}},
		{"short name: letters are counted, not bytes", edits{{"items", "Hydraulic power unit,Power unit,", "Hydraulic power unit,éééééééééééééééééé,"}}, nil},
		{"short name: twice on a rig", edits{{"items", "Hydraulic power unit,Power unit,", "Hydraulic power unit,hose pair 32 FT,"}},
			want{{"items.csv", 305, "short_name", `"Hose pair 32 ft" is P71-003 on this rig already`, "another short name"}}},
		{"short name: the name of another line", edits{{"items", "Hydraulic power unit,Power unit,", "Hydraulic power unit,Step chock,"}},
			want{{"items.csv", 304, "short_name", `"Step chock" is P71-005 on this rig already`, "another short name"}}},

		{"reference: rig of an item", edits{{"items", "R41-001,Battery spreader,,rescue spreader,R41,", "R41-001,Battery spreader,,rescue spreader,R14,"}},
			want{{"items.csv", 2, "rig", `there is no "R14" in rigs.csv`, "a row of rigs.csv"}}},
		{"reference: slot of an item", edits{{"items", "rescue spreader,R41,R41-L1-T,", "rescue spreader,R41,R41-L9,"}},
			want{{"items.csv", 2, "slot", `there is no "R41-L9" in slots.csv`, "a row of slots.csv or blank for no home yet"}}},
		{"reference: no home yet is allowed", edits{{"items", "rescue spreader,R41,R41-L1-T,", "rescue spreader,R41,,"}}, nil},
		{"reference: slot on another rig", edits{{"items", "rescue spreader,R41,R41-L1-T,", "rescue spreader,R41,E42-L1,"}},
			want{{"items.csv", 2, "slot", "slot E42-L1 is on E42, the line on R41", "a slot on R41"}}},
		{"reference: no such kit", edits{{"items", "counted,6,ea,8,R41-034,", "counted,6,ea,8,R41-934,"}},
			want{{"items.csv", 36, "kit", `there is no "R41-934" in items.csv`, "a row of items.csv or blank"}}},
		{"reference: a kit that is none", edits{{"items", "counted,6,ea,8,R41-034,", "counted,6,ea,8,R41-001,"}},
			want{{"items.csv", 36, "kit", "R41-001 is a line of kind piece", "a line of kind kit"}}},
		{"reference: a kit on another rig", edits{{"items", "counted,6,ea,8,R41-034,", "counted,6,ea,8,P71-012,"}},
			want{{"items.csv", 36, "kit", "kit P71-012 is on P71, the line on R41", "a kit on R41"}}},
		{"reference: no such stock", edits{{"items", "1,3,ST22,R41 SPRING PUNCH", "1,3,ST99,R41 SPRING PUNCH"}},
			want{{"items.csv", 24, "stock", `there is no "ST99" in stock.csv`, "a row of stock.csv or blank"}}},
		{"reference: rig of a slot", edits{{"slots", "R41-CF,R41,", "R41-CF,R4,"}},
			want{{"slots.csv", 2, "rig", `there is no "R4" in rigs.csv`, "a row of rigs.csv"}}},
		{"reference: agency of a rig", edits{{"rigs", "P71,Rescue-Pumper 71,OCVFC,", "P71,Rescue-Pumper 71,OCVFD,"}},
			want{{"rigs.csv", 5, "agency", `there is no "OCVFD" in agencies.csv`, "a row of agencies.csv or blank"}}},
		{"reference: agency of a member", edits{{"members", "Deputy,no,SHF,", "Deputy,no,SHE,"}},
			want{{"members.csv", 21, "agency", `there is no "SHE" in agencies.csv`, "a row of agencies.csv or blank"}}},
		{"reference: item of a pull list", edits{{"pull_lists", "", "Car extrication,R41-999,Thing,1,must,any,\r\n"}},
			want{{"pull_lists.csv", 118, "item", `there is no "R41-999" in items.csv`, "a row of items.csv or blank and a name"}}},

		{"check of an item: unknown", edits{{"items", "46,,function;edge;clean,spreader", "46,,function;edgy;clean,spreader"}},
			want{{"items.csv", 2, "checks", `there is no "edgy" in checks.csv`, "a row of checks.csv"}}},
		{"check of an item: twice", edits{{"items", "46,,function;edge;clean,spreader", "46,,edge;edge,spreader"}},
			want{{"items.csv", 2, "checks", "edge is asked twice", "each check once"}}},
		{"check of an item: another comparison", edits{{"items", "64,,fuel>=75;function", "64,,fuel>75;function"}},
			want{{"items.csv", 304, "checks", `"fuel>75" is not a check with its limit`, "CHECK or CHECK>=NUMBER"}}},
		{"check of an item: a limit in words", edits{{"items", "64,,fuel>=75;function", "64,,fuel>=most;function"}},
			want{{"items.csv", 304, "checks", `in "fuel>=most" "most" is not a number`, "fuel>= and a number"}}},
		{"check of an item: a limit out of range", edits{{"items", "64,,fuel>=75;function", "64,,fuel>=101;function"}},
			want{{"items.csv", 304, "checks", "fuel>=101 is outside the range of the check", "a limit from 0 to 100"}}},
		{"check of an item: a limit below the range", edits{{"checks", "", "lamps,Lamps lit,number 2-4,,,officer\r\n"}, {"items", "64,,fuel>=75;function", "64,,lamps>=1.5"}},
			want{{"items.csv", 304, "checks", "lamps>=1.5 is outside the range of the check", "a limit from 2 to 4"}}},
		{"check of an item: a limit for words", edits{{"items", "64,,fuel>=75;function", "64,,fuel>=75;function>=1"}},
			want{{"items.csv", 304, "checks", "function has a limit, its answers are yes/no", "function"}}},
		{"check: answers without yes", edits{{"checks", "Dry enough to stow,yes/no", "Dry enough to stow,dry/wet"}},
			want{{"checks.csv", 10, "answer", `"dry/wet" is no list of answers`, answers}}},
		{"check: a range upside down", edits{{"checks", "number 0-4,", "number 4-0,"}},
			want{{"checks.csv", 3, "answer", `"number 4-0" is no range`, answers}}},
		{"check: nobody named", edits{{"checks", "never when blood", "mostly"}},
			want{{"checks.csv", 9, "override", `"officer, mostly" does not say who may override`, overrides}}},

		{"check: yes never waved through", edits{{"checks", "never when blood", "never when yes"}},
			want{{"checks.csv", 9, "override", `"officer, never when yes" does not say who may override`, overrides}}},

		{"rule: no such item", edits{{"stow_rules", "P71-003,P71-004,alone", "P71-003,P71-904,alone"}},
			want{{"stow_rules.csv", 34, "then", `there is no "P71-904" in items.csv`, "a row of items.csv"}}},
		{"rule: an item that lives in a kit", edits{{"stow_rules", "P71-003,P71-004,alone", "P71-013,P71-004,alone"}},
			want{{"stow_rules.csv", 34, "first", "P71-013 lives in kit P71-012", inASlot}}},
		{"rule: an item without a home", edits{{"items", "R41-004,Ram support plate,,,R41,R41-L1-T,", "R41-004,Ram support plate,,,R41,,"}},
			want{{"stow_rules.csv", 25, "first", "R41-004 has no home yet", inASlot}}},
		{"rule: two rigs", edits{{"stow_rules", "P71-003,P71-004,alone", "P71-003,S44-044,alone"}},
			want{{"stow_rules.csv", 34, "then", "S44-044 is on S44, P71-003 on P71", "two pieces of one rig"}}},
		{"rule: closes what", edits{{"stow_rules", "P71-003,P71-004,alone", "P71-003,P71-004,one_end"}},
			want{{"stow_rules.csv", 34, "closes", `"one_end" is no way to close a space`, "alone or both_ends"}}},
		{"rule: a bay without a name", edits{{"stow_rules", "P71-003,P71-004,alone,P71-003>P71-004,", "P71-003,P71-004,both_ends,,"}},
			want{{"stow_rules.csv", 34, "group", "blank with both_ends", "one name for all the rules of the bay"}}},
		{"bay: one door", edits{{"stow_rules", "P71-003,P71-004,alone,", "P71-003,P71-004,both_ends,"}},
			want{{"stow_rules.csv", 34, "then", "the pieces that close group P71-003>P71-004 are behind 1 door: P71 L1 lap 1", twoDoors}}},
		{"bay: three doors", edits{{"stow_rules", "", "R41-028,R41-001,both_ends,G-T2X,why\r\n"}},
			want{{"stow_rules.csv", 2, "then", "the pieces that close group G-T2X are behind 3 doors: R41 T2 lap 2, R41 T2 lap 8, R41 L1 lap 1", twoDoors}}},
		{"bay: a piece in two", edits{{"stow_rules", "", "R41-028,R41-034,both_ends,G2,why\r\nR41-029,R41-041,both_ends,G2,why\r\n"}},
			want{{"stow_rules.csv", 35, "first", "R41-028 is in group G-T2X already", "one both_ends group for a piece"},
				{"stow_rules.csv", 36, "first", "R41-029 is in group G-T2X already", "one both_ends group for a piece"}}},

		{"loop: two rules", edits{{"stow_rules", "", "P71-004,P71-003,alone,x,why\r\n"}},
			want{{"stow_rules.csv", 35, "then", "a loop: P71-004 before P71-003 before P71-004", anEnd}}},
		{"loop: a piece before itself", edits{{"stow_rules", "P71-003,P71-004,alone", "P71-003,P71-003,alone"}},
			want{{"stow_rules.csv", 34, "then", "a loop: P71-003 before P71-003", anEnd}}},
		{"loop: through a bay", edits{{"stow_rules", "", "R41-034,R41-040,alone,x,why\r\n"}},
			want{{"stow_rules.csv", 35, "then", "a loop: R41-034 before R41-040 before R41-034", anEnd}}},
		{"loop: four rules", edits{{"stow_rules", "", "R41-054,R41-049,alone,x,why\r\n"}},
			want{{"stow_rules.csv", 35, "then", "a loop: R41-054 before R41-049 before R41-052 before R41-054", anEnd}}},
		{"loop: two loops are both named", edits{{"stow_rules", "", "P71-004,P71-003,alone,x,why\r\nS44-044,S44-001,alone,x,why\r\n"}},
			want{{"stow_rules.csv", 35, "then", "a loop: P71-004 before P71-003 before P71-004", anEnd},
				{"stow_rules.csv", 36, "then", "a loop: S44-044 before S44-001 before S44-044", anEnd}}},
		{"loop: a kit in itself", edits{{"items", "P71-012,Glass kit bag,,,P71,P71-R2,kit,1,ea,2,,", "P71-012,Glass kit bag,,,P71,P71-R2,kit,1,ea,2,P71-012,"}},
			want{{"items.csv", 313, "kit", "a loop: P71-012 before P71-012", anEnd}}},
		{"loop: kits in each other", edits{
			{"items", "P71-012,Glass kit bag,,,P71,P71-R2,kit,1,ea,2,,", "P71-012,Glass kit bag,,,P71,P71-R2,kit,1,ea,2,P71-099,"},
			{"items", "", "P71-099,Outer bag,,,P71,P71-R2,kit,1,ea,2,P71-012,,,no,no,no,no,,9,,\r\n"}},
			want{{"items.csv", 327, "kit", "a loop: P71-099 before P71-012 before P71-099", anEnd}}},

		{"several: all are named, by file and row", edits{
			{"items", "Wedge 4x4,,,R41,R41-L3-B,counted,24,", "Wedge 4x4,,,R41,R41-L3-B,counted,x,"},
			{"items", "rescue spreader,R41,R41-L1-T,piece,1,ea,46,", "rescue spreader,R41,R41-L9,piece,1,ea,y,"},
			{"rigs", "Rescue 41,MBFR", "Rescue 41,MBFD"}},
			want{{"rigs.csv", 2, "agency", `there is no "MBFD" in agencies.csv`, "a row of agencies.csv or blank"},
				{"items.csv", 2, "weight_lb", `"y" is not a number`, numberTo},
				{"items.csv", 2, "slot", `there is no "R41-L9" in slots.csv`, "a row of slots.csv or blank for no home yet"},
				{"items.csv", 60, "quantity", `"x" is not a number`, wholeTo}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, got := stores.Read(spoil(t, c.edits))
			if !slices.Equal(got, c.want) {
				t.Errorf("got:\n%v\nwant:\n%v", got, c.want)
			}
			if (d == nil) != (len(c.want) > 0) {
				t.Errorf("department: %v", d != nil)
			}
		})
	}
}

func TestFilesThatAreMissingEmptyOrUnreadableAreNamedOnce(t *testing.T) {
	for _, c := range []struct {
		name string
		turn func(fstest.MapFS)
		want string
	}{
		{"rigs missing", func(f fstest.MapFS) { delete(f, "rigs.csv") },
			"rigs.csv: the table is missing; right would be: one with a header row: rig,name,agency,role,seats,mark_words,mark_shape,mark_color"},
		{"slots missing", func(f fstest.MapFS) { delete(f, "slots.csv") },
			"slots.csv: the table is missing; right would be: one with a header row: slot,rig,compartment,side,description,hand_height_in,depth,lap"},
		{"checks missing", func(f fstest.MapFS) { delete(f, "checks.csv") },
			"checks.csv: the table is missing; right would be: one with a header row: check,question,answer,passes,if_it_fails,override"},
		{"places missing", func(f fstest.MapFS) { delete(f, "places.csv") }, ""},
		{"places empty", func(f fstest.MapFS) { f["places.csv"].Data = nil },
			"places.csv, row 1: there is no header; right would be: a header row: place,meaning"},
		{"stock is a folder", func(f fstest.MapFS) { f["stock.csv"].Mode = fs.ModeDir },
			"stock.csv: the table cannot be read: "},
	} {
		files := demoFiles(t)
		c.turn(files)
		_, got := stores.Read(files)
		if len(got) > 1 || !strings.HasPrefix(got.Error(), c.want) || (c.want == "") != (got.Err() == nil) {
			t.Errorf("%s:\n%v", c.name, got)
		}
	}
	_, got := stores.Read(fstest.MapFS{})
	if len(got) != 4 {
		t.Errorf("nothing there:\n%v", got)
	}
}

func TestAMissingTableOfItemsLeavesPullListsAlone(t *testing.T) {
	files := demoFiles(t)
	delete(files, "items.csv")
	_, got := stores.Read(files)
	if len(got) != 1 || got[0].File != "items.csv" || got[0].Row != 0 {
		t.Errorf("got:\n%v", got)
	}
}

func TestCheckFindsInADepartmentWhatReadWouldFind(t *testing.T) {
	d := mustRead(t, demoFS(t))
	if got := stores.Check(d); got != nil {
		t.Errorf("the demo:\n%v", got)
	}
	bad := d.Clone()
	bad.Items[3].Slot = "R41-L9"
	bad.Rigs[1].Extra = map[string]string{"seats": "5"}
	want := stores.Problems{
		{"rigs.csv", 1, "seats", "the column is there twice", "each column once"},
		{"items.csv", 5, "slot", `there is no "R41-L9" in slots.csv`, "a row of slots.csv or blank for no home yet"},
	}
	if got := stores.Check(bad.Index()); !slices.Equal(got, want) {
		t.Errorf("got:\n%v", got)
	}
}
