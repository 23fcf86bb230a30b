; Where does the boat drift? The first key is waited for in a loop that counts: the count is the seed of chance.
; While the boat drifts, the keyboard is only looked at: a key ends the drift early.
include equates.asm

        ld de, title
        call say
wait:   ld hl, (seed)
        inc hl
        ld (seed), hl
        ld c, 6
        ld e, 0xff
        call bdos
        or a
        jp z, wait
        call newline

play:   ld hl, (seed)           ; the next number: five times the last, and one
        ld d, h
        ld e, l
        add hl, hl
        add hl, hl
        add hl, de
        inc hl
        ld (seed), hl
        ld a, h
        and 7
        add a, '1'
        ld (goal), a
        ld a, 3
        ld (tries), a
ask:    ld de, prompt
        call say
        call key
        ld b, a
        cp 'Q'
        jp z, quit
        cp '1'
        jp c, wrong
        cp '9'
        jp nc, wrong
        push bc
        call drift
        pop bc
        ld a, (goal)
        cp b
        jp z, right
        ld de, west
        jp c, other
        ld de, east
other:  call say
        ld hl, tries
        dec (hl)
        jp nz, ask
        ld de, lost
        call say
        ld a, (goal)
        call put
        call newline
        jp play
right:  ld de, landed
        call say
        jp play
wrong:  ld de, huh
        call say
        jp ask
quit:   ld de, bye
        call say
        jp 0

drift:  ld de, gone             ; twelve waves, and a look at the keyboard after each
        call say
        ld b, 12
wave:   ld a, '~'
        call put
        push bc
        ld hl, 4000
calm:   dec hl
        ld a, h
        or l
        jp nz, calm
        ld c, 11
        call bdos
        pop bc
        or a
        jp nz, early
        dec b
        jp nz, wave
early:  jp newline

seed:   dw 0
goal:   db 0
tries:  db 0
title:  db 13, 10, "DRIFT", 13, 10, "The boat is loose, and eight coves lie along the shore, 1 in the west to 8 in", 13, 10
        db "the east. Say where she will come ashore. Press any key to cut the rope.$"
prompt: db "Which cove, 1 to 8, or Q to go home? $"
gone:   db 13, 10, "She drifts $"
west:   db "You wait in the dark. She went by to the west of you.", 13, 10, "$"
east:   db "You wait in the dark. She went by to the east of you.", 13, 10, "$"
lost:   db "Three nights, and no boat. They found her in cove $"
landed: db "Her keel grates on the shingle at your feet. Another rope, another night.", 13, 10, "$"
huh:    db 13, 10, "There is no such cove.", 13, 10, "$"
bye:    db 13, 10, "You go up to bed.", 13, 10, "$"
include common.asm
