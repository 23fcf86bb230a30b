; What every program needs. Registers other than those named are kept by put and newline alone.

say:    ld c, 9                 ; print the text at DE, up to a dollar sign
        jp bdos

newline: push af
        ld a, 13
        call put
        ld a, 10
        call put
        pop af
        ret

put:    push af                 ; print the character in A
        push bc
        push de
        push hl
        ld e, a
        ld c, 2
        call bdos
        pop hl
        pop de
        pop bc
        pop af
        ret

key:    ld c, 1                 ; wait for a key; A is its capital letter
        call bdos
upper:  cp 'a'
        ret c
        cp 123
        ret nc
        and 0x5f
        ret

askline: ld de, linebuf         ; read a line; A is its first character as a capital letter, 0 for none
        ld c, 10
        call bdos
        call newline
        ld a, (linelen)
        or a
        ret z
        ld a, (linetext)
        jp upper

number: push bc                 ; print HL as a decimal number
        push de
        push hl
        ld bc, 0xfff6           ; -10
        ld de, 0xffff           ; the quotient, less one
divide: inc de
        add hl, bc
        jp c, divide
        ld a, l
        add a, 10
        ex de, hl
        push af
        ld a, h
        or l
        call nz, number
        pop af
        add a, '0'
        call put
        pop hl
        pop de
        pop bc
        ret

linebuf: db 60
linelen: db 0
linetext: dw 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0
