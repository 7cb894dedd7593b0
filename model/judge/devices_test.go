package judge_test

import "testing"

// In a scene file seq is arrival and stamp at once; seen= is how much the
// writer knew.
func TestTwoDevicesThatDisagreeAreBothShown(t *testing.T) {
	scripts(t, map[string]string{
		"already there": `
			pull LIGHT home>tarp               -> ok
			hand LIGHT tarp>at:V1              -> ok
			hand LIGHT tarp>at:V1 dev=B seen=1 -> warned already_there
			: LIGHT at:V1=1 contest=-
			hand LIGHT tarp>at:V1 dev=B        -> refused not_there    # this one knew`,
		"only what is still there moves": `
			pull CONE 4 home>tarp              -> ok
			hand CONE 3 tarp>at:V1             -> ok
			hand CONE 4 tarp>at:V1 dev=B seen=1 -> warned already_there
			: CONE at:V1=4`,
		"the later row wins and both claims are kept": `
			pull LIGHT home>tarp               -> ok
			hand LIGHT tarp>at:V1              -> ok
			hand LIGHT tarp>at:V2 dev=B seen=1 -> contested
			: LIGHT at:V2=1 contest=at:V2
			close                              -> warned items_out open_differences
			move LIGHT at:V2>at:V3 seen=2      -> ok                   # A had not seen it
			: LIGHT contest=at:V2
			move LIGHT at:V3>at:V4             -> ok
			: LIGHT contest=-`,
		"whose reply said so knows of it": `
			pull LIGHT home>tarp               -> ok
			hand LIGHT tarp>at:V1              -> ok
			hand LIGHT tarp>at:V2 dev=B seen=1 -> contested
			move LIGHT at:V2>at:V3 dev=B seen=1 -> ok
			: LIGHT contest=- at:V3=1`,
		"a newer contested row takes the older one's place": `
			pull LIGHT home>tarp               -> ok
			hand LIGHT tarp>at:V1              -> ok
			hand LIGHT tarp>at:V2 dev=B seen=1 -> contested
			hand LIGHT tarp>at:V3 dev=C seen=1 -> contested            # it was moved on: nothing moves
			: LIGHT contest=at:V1 at:V2=1
			move LIGHT at:V2>at:V4 seen=3      -> ok
			: LIGHT contest=at:V1
			move LIGHT at:V4>at:V3 seen=4      -> ok
			: LIGHT contest=-`,
		"a contested row carries every reason": `
			pull HEAVY home>tarp               -> ok two_person
			hand HEAVY tarp>at:V1              -> ok two_person
			hand HEAVY tarp>at:V2 dev=B seen=1 -> contested two_person`,
		"a contested row can be refused": `
			pull DRILL home>tarp               -> ok
			hand DRILL tarp>at:V1              -> ok
			stow DRILL tarp>home dev=B seen=1  -> refused unanswered
			stow DRILL tarp>home dev=B seen=1 read=battery=90;clean=yes -> contested
			: DRILL home=1 contest=home`,
		"what was moved on is found where it was put": `
			pull CONE 4 home>tarp              -> ok
			hand CONE 4 tarp>at:V1             -> ok
			move CONE 2 at:V1>at:V3            -> ok
			hand CONE 4 tarp>at:V2 dev=B seen=1 -> contested          # not all are found: nothing moves
			: CONE at:V1=2 at:V3=2 contest=at:V1
			count CONE 2 at:V1>                -> ok
			: CONE contest=at:V1                                       # a count only compares
			seen CONE at:V1>at:V1              -> ok
			: CONE contest=-`,
		"even all of them are too few": `
			pull CONE 4 home>tarp              -> ok
			hand CONE 2 tarp>at:V1             -> ok
			hand CONE 5 tarp>at:V2 dev=B seen=1 -> refused not_there`,
		"eyes do not follow": `
			pull LIGHT home>tarp               -> ok
			hand LIGHT tarp>at:V1              -> ok
			seen LIGHT tarp>at:V2 dev=B seen=1 -> refused not_there
			correct LIGHT tarp>home dev=B seen=1 -> refused not_there`,
		"a match that another device made is not made twice": `
			direct BLOCK 2 home>at:V1          -> ok straight_off
			count BLOCK 0 at:V1>               -> warned short
			count NBLOCK 8                     -> warned extra
			match BLOCK 2 unexplained>riding:R2 -> ok
			match BLOCK 2 unexplained>riding:R2 dev=B seen=3 -> warned already_there
			: NBLOCK extra=2`,
	})
}

func TestASettleEndsAContest(t *testing.T) {
	contest := `
			pull CONE 4 home>tarp              -> ok
			hand CONE 4 tarp>at:V1             -> ok
			move CONE 1 at:V1>at:V4            -> ok
			move CONE 1 at:V4>at:V1            -> ok
			hand CONE 4 tarp>at:V2 dev=B seen=1 -> contested
			`
	scripts(t, map[string]string{
		"where nothing is contested": `settle CONE 1 >tarp -> refused not_contested`,
		"at the winning place nothing moves but the holder": contest + `
			: CONE contest=at:V2 at:V2=4
			settle CONE 3 >at:V2 hold=Crew     -> ok
			: CONE at:V2=4 contest=- holder@at:V2=Crew`,
		"elsewhere they come from the winning place": contest + `
			settle CONE 2 >at:V1               -> ok
			: CONE at:V1=2 at:V2=2 contest=-`,
		"too few": contest + `
			settle CONE 5 >at:V1               -> refused not_there
			settle CONE 1 >riding:R1           -> refused bad_row
			: CONE contest=at:V2`,
		"then from where the moves put them, newest first": contest + `
			move CONE 3 at:V2>at:V5 seen=4     -> ok
			: CONE contest=at:V2
			settle CONE 3 >at:V6               -> ok
			: CONE at:V5=1 at:V6=3 contest=-`,
		"a driver's word ends it too": contest + `
			vouch rig=R1                       -> warned by_word
			: CONE home=6 contest=-`,
	})
}

func TestACorrectThatTakesTheLastMoveBackLeavesNoTrace(t *testing.T) {
	scripts(t, map[string]string{
		"a wrong tap home": `
			direct DRILL home>at:V1 hold=Crew  -> ok straight_off
			check DRILL read=battery=30        -> warned low
			seen DRILL at:V1>home              -> warned log_was_wrong not_ready
			correct DRILL home>at:V1           -> ok
			: DRILL at:V1=1 doubt=0 open=battery holder@at:V1=Crew past=yes`,
		"newest first": `
			pull BOX home>tarp                 -> ok two_person
			hand BOX tarp>at:V1                -> ok two_person
			move BOX at:V1>at:V2               -> ok two_person
			correct BOX at:V2>at:V1            -> ok
			correct BOX at:V1>tarp             -> ok
			: BOX past=no
			: O2 past=no
			correct BOX tarp>home              -> ok
			: BOX home=1 past=no doubt=0`,
		"a kit and what is in it, tags and all": `
			tag O2                             -> ok
			pull BOX home>tarp                 -> ok two_person
			take_out BAG home>tarp             -> ok
			take_out O2 home>at:V1             -> warned tagged
			correct O2 at:V1>home              -> ok
			: O2 tags=1/0 past=no
			correct BAG tarp>home              -> ok
			correct BOX tarp>home              -> ok
			: BOX home=1`,
		"not when something else was said": `
			direct DRILL home>at:V1            -> ok straight_off
			check DRILL read=battery=90        -> ok
			correct DRILL at:V1>home           -> warned not_ready
			: DRILL doubt=1`,
		"not when something was said of what is in it": `
			direct BOX home>at:V1              -> ok straight_off two_person
			tag SAW                            -> ok
			correct BOX at:V1>home             -> warned not_ready unread_inside`,
		"not when something left it since": `
			pull BOX home>tarp                 -> ok two_person
			take_out SAW 2 home>at:V1          -> ok
			correct BOX tarp>home              -> ok
			: SAW at:V1=2`,
		"not when something came into it since": `
			take_out SAW 2 home>tarp           -> ok
			direct BOX home>at:V1              -> ok straight_off
			stow SAW 2 tarp>home               -> refused kit_away
			correct SAW 2 tarp>home            -> ok
			: SAW kit:BOX=2
			correct BOX at:V1>home             -> warned not_ready unread_inside`,
		"not when something was said of the kit it was in": `
			pull BOX home>tarp                 -> ok two_person
			take_out PUNCH home>at:V1          -> ok
			check BOX read=count=no            -> warned failed
			correct PUNCH at:V1>home           -> warned not_ready`,
		"a refused row says nothing": `
			direct DRILL home>at:V1            -> ok straight_off
			check DRILL read=battery=full      -> refused bad_reading
			correct DRILL at:V1>home           -> ok
			: DRILL doubt=0`,
		"not another number": `
			direct BLANKET 2 home>at:V1        -> ok straight_off
			correct BLANKET at:V1>home         -> warned not_ready
			: BLANKET doubt=1 at:V1=1`,
		"not in another scene": `
			direct DRILL home>at:V1            -> ok straight_off
			open                               -> ok
			correct DRILL at:V1>home           -> warned not_ready`,
		"not after a driver's word": `
			direct DRILL home>at:V1            -> ok straight_off
			vouch rig=R1                       -> warned by_word not_ready
			correct DRILL home>at:V1           -> ok
			: DRILL at:V1=1 open=battery,clean`,
		"nor after a restock": `
			use TAPE 3 home>used               -> ok
			restock TAPE 3 used>home           -> ok
			correct TAPE 3 home>used           -> ok
			: TAPE used=3`,
		"it ends a contest as any move does": `
			pull LIGHT home>tarp               -> ok
			hand LIGHT tarp>at:V1              -> ok
			hand LIGHT tarp>at:V2 dev=B seen=1 -> contested
			move LIGHT at:V2>at:V3 seen=2      -> ok
			: LIGHT contest=at:V2
			correct LIGHT at:V3>at:V2          -> ok
			: LIGHT contest=- at:V2=1`,
	})
}
