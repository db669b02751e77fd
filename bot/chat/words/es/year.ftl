part-placement = **Pregunta { $place }**
day-ready-placement = Hoy no hay lección. Vamos a ver por dónde empezar: de 12 a 20 preguntas, y puedes parar a la mitad y seguir la próxima vez. Algunas serán de cosas que aún no has visto; dilo y ya está, eso ayuda igual. Nada de esto es una nota.
button-not-met = Esto no lo he visto
button-how-to-type = ¿Cómo se escribe?
lead-not-met = Bueno es saberlo.
not-for-you-no-hints = Aquí no hay pistas: solo se mira lo que ya está firme. Si no lo está, déjalo, no pasa nada.
placement-unread = No he podido leerlo, y no ha costado nada. Escríbelo otra vez o pulsa el botón.
placement-unread-examples = Así: { $examples }
placement-paused = { $asked ->
    [one] Una pregunta hecha, el resto la próxima vez. Gracias.
   *[other] { $asked } preguntas hechas, el resto la próxima vez. Gracias.
  }
placement-done = Eso es todo, { $name }: { $asked } preguntas. Gracias. Ahora tu tutor sabe por dónde empezar contigo.
placement-found = **{ $name }** ({ $household }) ha hecho la prueba de dónde empezar: { $asked } preguntas.
placement-found-start = Apunta a la lección { $n }, { $lesson }.
placement-found-all = Nada del curso parece nuevo. Háblalo con la familia antes de decidir nada.
placement-found-patch = Conviene reforzar por el camino: { $titles }. *Empezar ahí* pone más de esto en el repaso durante tres semanas.
placement-found-else = Es una mirada pequeña, no una nota, y tú conoces mejor a { $name }. Otro comienzo: */lesson*.
placement-sure = Según su propia cuenta es bastante seguro, cinco lecciones arriba o abajo.
placement-likely = Es probable, no seguro, cinco lecciones arriba o abajo.
placement-guess = Es poco más que una suposición.
button-begin-there = Empezar ahí
digest-placing = { $questions ->
    [0] **{ $name }** ha empezado a ver por dónde empezar.
    [one] **{ $name }** ha empezado a ver por dónde empezar: una pregunta de momento, el resto la próxima vez. Sin notas.
   *[other] **{ $name }** ha empezado a ver por dónde empezar: { $questions } preguntas de momento, el resto la próxima vez. Sin notas.
  }
digest-placed = **{ $name }** ha visto por dónde empezar: { $questions } preguntas, sin notas. Apunta a *{ $lesson }*; decide el tutor.
digest-placed-all = **{ $name }** ha visto por dónde empezar: { $questions } preguntas, sin notas. Nada del curso parecía nuevo; el tutor lo hablará con ustedes.
command-placement = Ver por dónde empezar: de 12 a 20 preguntas en lugar de la próxima lección. No es una nota.
line-placement = { $names }: el { $date_day } se ve por dónde empezar en lugar de una lección, de 12 a 20 preguntas, una media hora, de una vez o de dos. No es una nota.
line-place = { $name } empieza con la lección { $n }, *{ $title }*.
line-patch = Durante tres semanas más de: { $titles }.
why-placement-already = Para { $name } ya está previsto ver por dónde empezar. */holds* lo muestra.
holds-placement = ver por dónde empezar, { $key_days }
placement-found-safer = Mucho entre la lección { $n }, { $lesson }, y esa parece nuevo, aunque las lecciones siguientes apenas lo necesitan. Quien empieza en la { $n } no se pierde nada.
button-begin-at = Empezar en la lección { $n }
