package judge_test

import "testing"

func TestACountComparesAndNeverAbsorbsInSilence(t *testing.T) {
	scripts(t, map[string]string{
		"short, and back": `
			count CONE 4                       -> warned short
			: CONE home=4 unexplained=2
			count CONE 4                       -> ok
			count CONE 5                       -> warned came_back
			count CONE 8                       -> warned came_back extra
			: CONE home=6 unexplained=0 extra=2
			count CONE 6                       -> ok                 # a count wipes the earlier extra
			: CONE extra=0`,
		"a consumable was used": `
			use TAPE 2 home>used               -> ok
			count TAPE 5                       -> warned unlogged_use
			: TAPE used=5 found=3
			count TAPE 9                       -> warned came_back extra # logged use does not come back
			: TAPE used=2 found=0 extra=1 home=8
			count TAPE 6                       -> warned unlogged_use
			restock TAPE 3 used>home           -> ok                 # logged use goes first
			: TAPE used=1 found=1`,
		"what a count found is logged use in the next scene": `
			count TAPE 7                       -> warned unlogged_use
			: TAPE found=3
			open                               -> ok
			: TAPE found=0 used=3
			count TAPE 9                       -> warned extra
			: TAPE home=7 extra=2
			open                               -> ok
			: TAPE extra=0`,
		"places": `
			count SAW 1                        -> warned short       # blank is its kit
			: SAW kit:BOX=1
			count SAW 2 kit:BAG>               -> refused bad_row
			count SAW 2 kit:BOX>               -> warned came_back
			count LIGHT 0 riding:R2>           -> ok
			count LIGHT 0 riding:X9>           -> refused bad_row
			count LIGHT 1 at:V1>               -> warned extra
			count LIGHT 0 with:MED9>           -> refused bad_row`,
	})
}

func TestTagsAndDoubtsFollowTheirPieces(t *testing.T) {
	scripts(t, map[string]string{
		"tag": `
			tag CONE 7                         -> refused not_there
			pull CONE 2 home>tarp              -> ok
			tag CONE 3 read=bent               -> ok
			: CONE tags=1/2
			tag CONE 4                         -> refused not_there
			stow CONE tarp>home                -> refused tagged
			stow_tagged CONE 2 tarp>home       -> ok
			: CONE tags=3/0 ready=3
			pull CONE 3 home>tarp              -> ok                 # the sound ones go first
			: CONE tags=3/0
			pull CONE home>tarp                -> warned tagged
			: CONE tags=2/1
			repair CONE 4                      -> refused not_tagged
			repair CONE 2                      -> ok
			: CONE tags=0/1
			stow CONE 4 tarp>home              -> refused tagged
			stow CONE 3 tarp>home              -> ok
			: CONE tags=0/1`,
		"used up and lost ones cannot be tagged": `
			use TAPE 8 home>used               -> ok
			tag TAPE 3                         -> refused not_there
			tag TAPE 2                         -> ok
			use TAPE 1 home>used               -> warned tagged
			: TAPE tags=1/0
			restock TAPE 9 used>home           -> ok
			: TAPE tags=1/0 ready=9`,
		"a check looks at those out first, then at home": `
			direct BLANKET home>at:V1          -> ok straight_off
			check BLANKET 2 read=clean=no      -> warned failed
			: BLANKET doubt=1 open=clean
			check BLANKET 3 read=clean=no      -> warned failed
			: BLANKET doubt=2
			check BLANKET 2 read=dry=yes       -> ok                 # clean is still open
			: BLANKET doubt=2
			check BLANKET 2 read=clean=yes     -> ok
			: BLANKET doubt=1 open=-
			check BLANKET 3 read=battery=9     -> ok                 # not one of its checks
			: BLANKET doubt=1
			check BLANKET 3 read=dry=yes       -> ok
			: BLANKET doubt=0`,
		"those in doubt leave last, and a tag takes them first": `
			check BLANKET 2 read=clean=no      -> warned failed
			pull BLANKET home>tarp             -> ok
			: BLANKET doubt=2
			pull BLANKET home>tarp             -> ok
			: BLANKET doubt=1
			tag BLANKET 3                      -> ok
			: BLANKET doubt=0 tags=1/2`,
		"a repair closes the checks": `
			tag DRILL                          -> ok
			check DRILL read=battery=3         -> warned low
			: DRILL open=battery doubt=0
			repair DRILL                       -> ok
			: DRILL open=- ready=1`,
		"a piece seen where it is is looked at": `
			seen DRILL home>home read=battery=3 -> warned low
			: DRILL doubt=1 open=battery
			seen DRILL home>home read=battery=99 -> ok
			: DRILL doubt=0
			seen DRILL tarp>tarp               -> refused not_there`,
	})
}

func TestLeavingIsNeverStoppedButSaysWhatIsOpen(t *testing.T) {
	// ICS 221, Demobilization Check-Out (FEMA 502-2, 2010): resources are not
	// released until the checked boxes have been signed off. Here the box is
	// the list: leaving is signed with it, and never stopped.
	scripts(t, map[string]string{
		"a rig": `
			leave rig=R1                       -> ok
			arrive rig=R1                      -> ok
			pull LIGHT home>tarp               -> ok
			release rig=R1                     -> warned items_out
			count LIGHT 0 tarp>                -> warned short
			release rig=R1                     -> warned open_differences
			found LIGHT unexplained>tarp       -> ok
			lend LIGHT tarp>with:R2            -> ok
			release rig=R1                     -> warned open_items
			release rig=R2                     -> warned agency_has_items
			take_back LIGHT with:R2>tarp       -> ok
			carry LIGHT tarp>riding:R2         -> ok
			leave rig=R2                       -> warned carries_others
			leave rig=R1                       -> warned open_items
			count CONE 7                       -> warned extra
			use TAPE home>used                 -> warned rig_back
			leave rig=R1                       -> warned open_differences open_items`,
		"without a name, too": `
			leave by= rig=R1                   -> ok`,
		"an agency": `
			lend BOX home>with:MED9            -> ok two_person
			leave rig=MED9                     -> warned agency_has_items
			leave rig=QC                       -> ok
			leave                              -> refused bad_row
			leave rig=X9                       -> refused bad_row
			accept by=CREW rig=R1              -> refused not_officer
			accept by=NEIGH rig=R1             -> ok
			accept by=NEIGH rig=X9             -> refused bad_row`,
		"the scene": `
			close                              -> ok
			open                               -> ok
			pull LIGHT home>tarp               -> ok
			close                              -> warned items_out
			count LIGHT 0 tarp>                -> warned short
			close                              -> warned open_differences`,
	})
}

func TestANewSceneForgetsOnlyWhatBelongsToTheOld(t *testing.T) {
	scripts(t, map[string]string{
		"open": `
			direct DRILL home>at:V1 hold=Crew  -> ok straight_off
			check DRILL read=battery=3         -> warned low
			tag CONE 2                         -> ok
			check BLANKET read=clean=no        -> warned failed
			arrive rig=X9                      -> warned new_rig
			open                               -> ok
			: DRILL at:V1=1 past=no open=battery holder@at:V1=Crew
			: CONE tags=2/0
			: BLANKET doubt=1 open=clean
			leave rig=X9                       -> ok
			move DRILL at:V1>at:V2             -> ok`,
		"a check answered in the last scene is not answered in this": `
			direct BOX home>tarp               -> refused bad_row
			direct BOX home>at:V1              -> ok straight_off two_person
			check O2 read=oxygen=1500          -> ok
			open                               -> ok
			stow BOX at:V1>home read=count=yes -> warned unread_inside two_person`,
	})
}

// The rules that a put-back check can be held to. Sources: WHO Surgical
// Safety Checklist, Implementation Manual (WHO/IER/PSP/2008.05), sign out;
// AORN, retained surgical items, when to count; Navy Tool Control Program
// (NAVAIR, tpub 14018 and 14016). The recount after an interruption (AORN)
// is from memory, and the window's: a count is one act here.
func TestCountAndToolControl(t *testing.T) {
	scripts(t, map[string]string{
		"1 the books are the baseline at issue": `
			: CONE home=6
			pull CONE 2 home>tarp              -> ok
			count CONE 4                       -> ok
			count CONE 2 tarp>                 -> ok`,
		"2 recount on handover and before leaving": `
			pull CONE 2 home>tarp              -> ok
			relieve hold=CHIEF                 -> ok
			count CONE 1 tarp>                 -> warned short
			leave rig=R1                       -> warned items_out open_differences`,
		"3 any difference, short or over, is not correct": `
			count CONE 5                       -> warned short
			close                              -> warned open_differences
			count CONE 6                       -> warned came_back
			count CONE 7                       -> warned extra
			close                              -> warned open_differences
			count CONE 6                       -> ok
			close                              -> ok`,
		"4 nothing leaves with a box open unnamed": `
			lend CONE home>with:MED9           -> ok
			leave rig=R1                       -> warned open_items`,
		"5 a miss is closed by an officer, and stays on the books": `
			count CONE 5                       -> warned short
			look CONE by=CREW note=bank        -> ok
			stop_looking CONE by=CREW unexplained>lost -> refused not_officer
			stop_looking CONE by=CHIEF unexplained>lost -> ok
			: CONE lost=1
			leave rig=R1                       -> warned open_items`,
		"6 a second name on what stays behind": `
			direct CONE home>at:V1             -> ok straight_off
			leave rig=R1                       -> warned items_out
			accept by=CREW rig=R1              -> refused not_officer
			accept by=NEIGH rig=R1             -> ok`,
		"7 a count without a number is no count": `
			count CONE                         -> refused unanswered
			: CONE home=6 unexplained=0`,
	})
}
