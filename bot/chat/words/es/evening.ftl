digest-worked = **{ $name }** hizo { $done } de { $out_of }; { $first } a la primera.
digest-all-right = **{ $name }** hizo los { $out_of }, todos a la primera.
digest-enough = **{ $name }** hizo { $done } de { $out_of } y luego tuvo bastante, y está bien así; { $first } a la primera.
digest-only-begun = **{ $name }** empezó hoy y no llegó al repaso.
digest-nothing-started = **{ $name }**: hoy no se abrió. Nada se acumula: la misma lección espera a la próxima vez. Si ese también es mal día, *Día corto* lleva diez minutos.
digest-day-off = **{ $name }** tuvo el día libre. No se perdió nada.
digest-only-paper = **{ $name }** trabajó en papel: { $done } de { $out_of } hechos, { $first } a la primera. Nadie midió el tiempo.
digest-paper-waiting = **{ $name }** tiene la hoja en papel. Aún no llegó ninguna respuesta: { $name } puede enviarlas con sus números, o anota tú la página en una línea con */marks*.
digest-test-begun = **{ $name }** empezó la prueba y aún no la entregó. No se pierde nada, y no hay reloj.
digest-our-fault = Lo de hoy no se pudo enviar a **{ $name }**. Fue culpa nuestra; no se perdió nada, y el mismo día espera a la próxima vez.
digest-test = **{ $name }** entregó una prueba: { $first } de { $out_of }. { $out_of } ejercicios son una mirada pequeña.
digest-day-of = ({ $day })
digest-new = Nuevo hoy: *{ $lesson }*.
digest-well = *{ $well }* salió bien de principio a fin.
digest-counts = A la primera { $first }, en otro intento { $later }{ $unsolved ->
    [0] {""}
   *[other] , aún abiertos { $unsolved }
  }{ $untouched ->
    [0] {""}
   *[other] , sin llegar { $untouched }
  }{ $excused ->
    [0] {""}
   *[other] , excusados { $excused }
  }.
digest-tries = { $later ->
    [one] El de otro intento llevó { $tries } intentos.
   *[other] Los { $later } de otro intento llevaron { $tries } en total.
  }
digest-open = Sigue abierto, de *{ $title }*: { $ask }
digest-put-right = Uno de *{ $title }* se escapó, y otro parecido salió bien: { $ask }
digest-answered = { $name } escribió { $answered }.
digest-may = Parece que detrás puede estar esto: { $say }
digest-more-open = { $count ->
    [one] Hay uno más en el botón.
   *[other] Hay { $count } más en el botón.
  }
digest-talk = **Para diez minutos:** { $title }.
digest-talk-two = **Para diez minutos:** { $title }, y después { $other }.
digest-talk-ask-above = Haced juntos el de arriba. Pregunta: { $say }
digest-talk-ask-plain-above = Haced juntos el de arriba. Pregunta: ¿Cómo empezarías, y por qué?
digest-talk-ask = Haced juntos este: { $ask } Pregunta: { $say }
digest-talk-ask-plain = Haced juntos este: { $ask } Pregunta: ¿Cómo empezarías, y por qué?
digest-talk-tears = Si acaba en lágrimas, parad; puede esperar.
digest-nothing-to-talk = Esta noche no hay nada que sentarse a mirar.
digest-facts = { $rate ->
    [none] Cálculo básico: { $right } de { $out_of }.
   *[other] { $best ->
        [none] Cálculo básico: { $right } de { $out_of }, { $rate } por minuto.
       *[other] Cálculo básico: { $right } de { $out_of }, { $rate } por minuto (su mejor marca hasta ahora: { $best }).
      }
  }
digest-late = { $count ->
    [one] El resumen de ayer ya había salido cuando llegó una respuesta más; { $right ->
        [0] aún no está bien
       *[other] está bien
      }.
   *[other] Después del último resumen llegaron { $count } respuestas, { $right } de ellas bien.
  }
digest-week = Esta semana: { $week }
digest-tomorrow = Lo próximo, el { $day }: *{ $lesson }*.
digest-tomorrow-review = Lo próximo, el { $day }: repaso, sin lección nueva.
digest-note = Del tutor: { $note }
digest-accepted = El tutor contó una respuesta en *{ $lessons }*; los números de arriba ya la incluyen.
digest-minutes = Unos { $minutes } minutos de trabajo.
draw-bar = Que { $name } lo dibuje como una barra cortada en trozos iguales.
draw-number-line = Que { $name } dibuje una recta numérica y ande por ella.
draw-rectangle = Que { $name } dibuje el rectángulo y escriba una longitud en cada lado.
draw-grid = Que { $name } dibuje los dos ejes y ponga los puntos.
draw-table = Que { $name } dibuje la tabla y diga qué pasa de una columna a la siguiente.
draw-balance = Que { $name } dibuje los dos lados como una balanza.
draw-picture = Que { $name } haga el dibujo y diga qué es cada número.
draw-fraction = Que { $name } dibuje cada fracción como una barra del mismo largo.
draw-story = Que { $name } lo cuente como un cuento antes de calcularlo.
button-did-it = Lo hicimos
button-still-hard = Sigue costando
button-not-tonight = Hoy no
button-in-full = Todos los abiertos
button-solution = Solución
button-week-picture = La semana en un dibujo
button-open-digest = Abrir
button-close-digest = Guardar
digest-line = El día de { $name } en un mensaje, para los mayores:
open-in-full = **{ $name }**: aún abiertos
open-in-full-none = Ya no queda nada abierto.
open-item = *{ $title }*: { $ask }
open-item-answered = Escribió { $answered }. La respuesta es { $answer }.
open-item-blank = La respuesta es { $answer }.
talk-did-it = Bien. Eso ayuda más que todo lo que yo pueda hacer.
talk-still-hard = Gracias por decirlo. Vuelve de otra manera.
talk-still-hard-tutor = Gracias por decirlo. { $tutor } ya lo sabe y se ocupa.
talk-not-tonight = Muy bien. Puede esperar.
still-hard = **{ $student }** ({ $household }): la familia se sentó dos veces con *{ $title }*, y sigue costando.
week-title = **{ $name }**, semana del { $monday }
week-day = { $day }: { $what }.
week-day-first = { $count } a la primera
week-day-later = { $count } en otro intento
week-day-open = { $count ->
    [one] { $count } aún abierto
   *[other] { $count } aún abiertos
  }
week-day-rest = { $count } sin llegar
week-day-nothing = nada que contestar
week-empty = Esta semana aún no hay nada.
written-ends = { $lessons ->
    [0] **{ $student }** ({ $household }) ha visto la última lección que está escrita. Desde ahora hay días de repaso.
    [one] A **{ $student }** ({ $household }) le queda una lección de las que están escritas. Después hay días de repaso.
   *[other] A **{ $student }** ({ $household }) le quedan { $lessons } lecciones de las que están escritas. Después hay días de repaso.
  }
unreachable = **{ $name }** ({ $household }) ha bloqueado este chat, así que por ahora no le llega nada. Sigue en cuanto { $name } vuelva a escribir aquí.
