; A pager: prints the text file that its command line names, TIDES.TXT without one, 23 lines at a time.
include equates.asm

        ld a, (0x5d)
        cp ' '
        jp nz, open
        ld hl, default          ; a name of eleven characters into the control block
        ld de, 0x5d
        ld b, 11
copy:   ld a, (hl)
        ld (de), a
        inc hl
        inc de
        dec b
        jp nz, copy
open:   ld de, fcb
        ld c, 15
        call bdos
        inc a
        ld de, missing
        jp z, fail
        ld a, 23
        ld (left), a

record: ld de, fcb
        ld c, 20
        call bdos
        or a
        jp nz, done
        ld hl, buffer
        ld b, 128
char:   ld a, (hl)
        cp 0x1a
        jp z, done
        push hl
        push bc
        call put
        cp 10
        call z, feed            ; Z afterwards: stop. Any character but LF leaves NZ
        pop bc
        pop hl
        jp z, stop
        inc hl
        dec b
        jp nz, char
        jp record

feed:   ld hl, left             ; Z where the reader has had enough
        dec (hl)
        jp nz, more
        ld (hl), 23
        ld de, ask
        call say
        call key
        push af
        ld de, wipe
        call say
        pop af
        cp 'Q'
        ret
more:   or 1
        ret

done:   ld de, end
fail:   call say
stop:   jp 0

left:   db 0
default: db "TIDES   TXT"
missing: db "There is no such file on this disk.", 13, 10, "$"
ask:    db "-- more: any key, or Q to stop --$"
wipe:   db 13, "                                 ", 13, "$"
end:    db 13, 10, "(end of the file)", 13, 10, "$"
include common.asm
