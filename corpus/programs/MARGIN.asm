; Patches the console's entry of the BIOS table, so that everything printed is broken at 40 columns between
; words, reads the book of rules through it, and puts the old entry back.
include equates.asm

        ld hl, (1)              ; the second entry of the table; the console's output is the fifth
        ld de, 10
        add hl, de
        ld (entry), hl
        ld e, (hl)
        inc hl
        ld d, (hl)
        ex de, hl
        ld (old), hl
        ld hl, filter
        ex de, hl
        ld hl, (entry)
        ld (hl), e
        inc hl
        ld (hl), d

        ld de, rules
        call say
        ld de, prompt
        call say
        call key
        push af
        ld de, more
        call say
        pop af
        cp 'N'
        ld de, rest
        call nz, say

        ld hl, (old)
        ex de, hl
        ld hl, (entry)
        ld (hl), e
        inc hl
        ld (hl), d
        ld de, back
        call say
        jp 0

filter: push hl                 ; the character is in C
        push af
        ld a, c
        cp 13
        jp z, start
        cp 32
        jp c, pass
        jp nz, letter
        ld a, (column)          ; a blank near the margin becomes a new line
        cp 32
        jp c, letter
        push bc
        ld c, 13
        call through
        ld c, 10
        call through
        pop bc
        xor a
        ld (column), a
        pop af
        pop hl
        ret
start:  xor a
        ld (column), a
        jp pass
letter: ld hl, column
        inc (hl)
pass:   pop af
        pop hl
through: push hl                ; on to the old routine, all registers as they were
        ld hl, (old)
        ex (sp), hl
        ret

entry:  dw 0
old:    dw 0
column: db 0
rules:  db "RULES FOR KEEPERS", 13, 10
        db "1. The lamp is lit at sunset and put out at sunrise, whatever anybody says of the weather, and the hour of both is written down.", 13, 10
        db "2. A keeper who hears the horn of a ship answers it, though he has slept but an hour.", 13, 10, "$"
prompt: db "More? (y/n) $"
more:   db 13, 10, "$"
rest:   db "3. Oil is measured in the morning by one keeper and in the evening by the other, and the two do not compare until Sunday.", 13, 10
        db "4. Nobody keeps a pig on the rock again.", 13, 10, "$"
back:   db "(This line is printed by the old routine again, and it runs over the margin.)", 13, 10, "$"
include common.asm
