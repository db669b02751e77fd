# La carta de la semana
week-head = **{ $name }**, semana del { $monday }: { $planned ->
    [one] su único día de clase se abrió
   *[other] { $opened } de { $planned } días de clase
  }.
week-head-none = **{ $name }**, semana del { $monday }: no se abrió ningún día de clase. Nada se acumula.
week-counted = Hizo { $done } de { $out_of } ejercicios de repaso, { $first } de ellos a la primera.
week-time = Tiempo de trabajo: { $time }.
week-time-paper = { $days ->
    [one] Un día fue en papel, así que nadie midió el tiempo.
   *[other] { $days } días fueron en papel, así que nadie midió el tiempo.
  }
week-time-besides = { $days ->
    [one] Un día fue en papel y no está incluido.
   *[other] { $days } días fueron en papel y no están incluidos.
  }
week-learned = Nuevo: { $titles }.
week-steady = Parece firme: { $titles }.
week-shaky = Parece inseguro, así que vuelve: { $titles }.
week-test = **{ $title }**: { $right } de { $out_of }. { $missed ->
    [0] { $out_of } ejercicios son una mirada pequeña.
    [one] El que conviene mirar otra vez está en la carta. { $out_of } ejercicios son una mirada pequeña.
   *[other] Los { $missed } que conviene mirar otra vez están en la carta. { $out_of } ejercicios son una mirada pequeña.
  }
week-next = La semana que viene: { $what }.
week-next-review = La semana que viene: repaso.
week-next-none = La semana que viene: ningún día de clase.
week-line = La semana de { $name } en un mensaje, para los mayores:
button-letter-pdf = La carta para imprimir
paper-time = { $hours ->
    [0] { $minutes } min
   *[other] { $hours } h { $minutes } min
  }
paper-few = { $title } ({ $answers ->
    [0] sin respuestas aún
    [one] una respuesta hasta ahora
   *[other] { $answers } respuestas hasta ahora
  })
paper-more = { $count } más
letter-here = **{ $name }**: la carta del { $first } al { $last }.
letter-file = carta
letter-title = La semana de { $name } en matemáticas
letter-under = Del { $first } al { $last } · tutora o tutor: { $tutor }
letter-new = Nuevo
letter-time = Tiempo
letter-finish = El año
letter-standing = Lo que se preguntó esta semana y cómo está
letter-unsure = *Firme* quiere decir: según las respuestas hasta ahora, hoy saldría bien más o menos cuatro de cada cinco veces o más. *Inseguro* quiere decir menos seguro que eso. Las dos cosas son una suposición a partir de unas pocas respuestas, no una medida, y cambian de una semana a otra. Donde hay pocas respuestas detrás, pregunte otra vez antes de creerlo.
letter-lesson = Lección
letter-stands = Parece
letter-answers = Se apoya en
letter-answers-few = { $answers ->
    [0] ninguna respuesta aún
    [one] solo una respuesta
   *[other] solo { $answers } respuestas
  }
letter-answers-many = { $answers } respuestas
letter-test = { $title }, { $day }: { $right } de { $out_of }
letter-test-note = Para mirar otra vez. { $out_of } ejercicios son una mirada pequeña: uno más o menos dice poco.
letter-test-all = Nada que mirar otra vez. { $out_of } ejercicios son una mirada pequeña.
letter-question = Pregunta
letter-wrote = Escribió
letter-answer = Respuesta
letter-blank = (en blanco)
letter-plan = La semana que viene, tal como se ve hoy
letter-plan-note = Depende de lo que pase hasta entonces; solo el primer día es una promesa.
letter-closing = Un recuento de aciertos es una mirada a una semana, no a una persona. Si algo no te suena a lo que ves en casa, díselo a quien da las clases; tú ves más que un chat.
letter-footer = { $name } · carta de la semana
command-letter = Una semana en un mensaje, con una carta para imprimir. Con una fecha: la semana de esa fecha.
why-date-ahead = { $date_day } aún está por venir.
chart-first = a la primera
chart-later = otro intento
chart-unsolved = por resolver
chart-rest = sin llegar
chart-lessons = lecciones
chart-done = hecho
chart-planned = previsto
chart-finish = final probable
chart-steady = firme
chart-shaky = inseguro
chart-not-met = sin ver
chart-day-done = hecho
chart-partly = en parte
chart-test = prueba
chart-not-opened = sin abrir
chart-off = libre
chart-to-come = por venir

# Hojas, soluciones, páginas
sheet-title = Repaso del { $day }
sheet-under = { $name } · { $items ->
    [one] un ejercicio
   *[other] { $items } ejercicios
  }
sheet-intro = En cualquier orden. Escribe cómo lo haces; el número de delante es el que se envía con la respuesta, como en **3) 1/2**.
sheet-source = de *{ $lesson }*
sheet-calculator = aquí se puede usar calculadora
sheet-key = respuestas y pasos
sheet-footer = { $name } · { $day }
sheet-file = hoja
sheet-key-file = soluciones
sheet-here = **{ $name }**: el repaso del { $day } para imprimir, { $items ->
    [one] un ejercicio
   *[other] { $items } ejercicios
  }.
sheet-fixed = Estos ejercicios quedan fijos para ese día, para que el papel y el chat vayan juntos.
sheet-how = Las respuestas se pueden enviar por el chat en cualquier orden, varias en un mensaje: *3) 1/2  4) -7*. Una foto de la página se guarda para quien da las clases; yo no sé leer fotos.
key-here = **{ $name }**: respuestas y pasos del { $day }. Que { $name } no las vea antes de terminar.
button-key = Respuestas y pasos
pages-none = { $name } no envió fotos el { $day }.
pages-here = { $name }, { $day }: { $count ->
    [one] una foto
   *[other] { $count } fotos
  } del trabajo.
pages-said = Con ellas: «{ $words }»
pages-alt = Una foto de la página de { $name }, { $day }. Yo no sé leer fotos.
command-sheet = El repaso de un día para imprimir (A4 o *carta*; letra *grande* si se quiere).
command-key = Respuestas y pasos de una hoja.
command-pages = Fotos de páginas que se enviaron.
line-printed = { $name }: la hoja del { $date_day } queda fija.
wish-printed = se imprimió una hoja para este día, y su repaso queda fijo
holds-printed = una hoja impresa, { $key_days }
why-no-sheet = { $name } no tiene repaso el { $date_day }.
why-no-sheet-then = No hay hoja de { $name } para el { $date_day }. Se hacen hojas para hoy y las dos semanas siguientes.
button-print = Para imprimir

# Registros
span = del { $first } al { $last }
span-day = del { $first }
records-head = **{ $name }**, { $span }
records-days = { $opened ->
    [one] Un día de clase
   *[other] { $opened } días de clase
  }, tiempo de trabajo { $time }.
records-paper = { $days ->
    [one] Uno de los días fue en papel, así que nadie midió su tiempo.
   *[other] { $days } de los días fueron en papel, así que nadie midió su tiempo.
  }
records-lessons = { $count ->
    [one] Una lección vista.
   *[other] { $count } lecciones vistas.
  }
records-tests = { $count ->
    [one] Una prueba.
   *[other] { $count } pruebas.
  }
records-hands-on = { $count ->
    [one] Una lección práctica.
   *[other] { $count } lecciones prácticas.
  }
records-standards = Estándares que cumplen estas lecciones: { $count }.
records-samples = Fotos de trabajos: { $count }.
samples-here = **{ $name }**, { $span }: { $count ->
    [one] una foto de un trabajo.
   *[other] { $count } fotos de trabajos.
  }
samples-none = **{ $name }** no envió fotos de trabajos { $span }.
button-more-photos = Los días siguientes ({ $left } más)
records-law = Lo que una familia debe guardar, y durante cuánto tiempo, cambia de un lugar a otro. Mira, por favor, las reglas del tuyo; esto es solo lo que aquí quedó anotado.
records-csv = **{ $name }**, { $span }: archivos para una hoja de cálculo. *columns.txt* dice (en inglés) qué hay en cada columna.
button-record-pdf = Para guardar (PDF)
button-record-csv = Para hoja de cálculo
button-record-photos = Fotos de trabajos
button-record-handover = Para la próxima escuela
record-here = **{ $name }**: el registro { $span }.
record-file = registro
record-title = Matemáticas
record-under = { $name } · { $span } · familia { $household } · tutora o tutor: { $tutor }
record-footer = { $name } · matemáticas · { $span }
handover-here = **{ $name }**: para quien enseñe después o para la escuela, { $span }. No se calcula ninguna nota; hay una línea donde un padre o una madre puede escribirla.
handover-file = curso
handover-title = Un curso de matemáticas
handover-course = **El curso.** { $course }, un curso de un año en casa con una tutora o un tutor, para edades de unos 11 a 14 años.
handover-way = **Cómo se enseñó.** En un día normal: operaciones básicas o cálculo mental, una lección corta con un ejemplo resuelto, cuatro ejercicios guiados y un repaso mezclado de lecciones anteriores, que vuelven cada vez más separadas. Cada respuesta se revisó al momento, y lo que quedó sin resolver llevó una solución paso a paso. Hay una prueba unas dos veces por unidad, sin reloj.
handover-units = **Unidades del curso:** { $units }.
record-days = Días de clase
record-time = Tiempo
record-time-paper = { $days ->
    [one] un día en papel no está incluido
   *[other] { $days } días en papel no están incluidos
  }
record-lessons = Lecciones
record-tests = Pruebas
record-hands-on = Lecciones prácticas
record-standards = Estándares que cumplen estas lecciones
record-samples = Fotos de trabajos
record-day = Día
record-what = Lección o tipo de día
record-minutes = Minutos
record-solved = Resueltos
record-on-paper = en papel
record-kind-lesson = lección empezada
record-kind-light = repaso, día ligero
record-kind-review-only = repaso
record-kind-small = día corto
record-kind-gentle = repaso tras unos días fuera
record-kind-test = prueba
record-kind-off-season = diez minutos en vacaciones
record-kind-missed = –
record-kind-placement = una mirada a por dónde empezar
record-caption = Lo que se escribió con ella
record-samples-below = Algunas están abajo, en pequeño.
record-samples-note = Las fotos están en el chat y en los archivos de los que habla */export*. Una foto puede mostrar más que el trabajo: mírala, por favor, antes de darla a otros.
record-test = Prueba
record-right = Aciertos
record-tests-note = Aciertos de los que se preguntaron. No se calcula ninguna nota, y veinte ejercicios son una mirada pequeña.
record-task = Tarea
record-first-met = Vista por primera vez
record-lesson = Lección
record-unit = Unidad
record-code = Código
record-gist = Lo que pide, en breve (en inglés)
record-met-by = Lo cumple
record-standards-note = Códigos de los Common Core State Standards for Mathematics (2010); las palabras son nuestras. Que una lección cumpla un estándar dice que se vio, no lo firme que está.
record-hours = Días y horas
record-month = Mes
record-firm = Lo que está firme, en lecciones
record-firm-note = *Firme*, *inseguro* y *sin ver* es lo que hacen probable las respuestas hasta el día de este papel. Es una suposición a partir de un número limitado de respuestas, no una medida, y se apaga con el tiempo: por favor pregunte antes de construir encima.
record-blank-mark = Nota, si un padre o una madre quiere escribirla (aquí no se calcula ninguna):
record-blank-by = Firma:
record-blank-date = Fecha:
command-records = Lo que se hizo en unos días: para guardar, para una hoja de cálculo o para la próxima escuela.
why-record-range = Escribe, por favor, unos días que ya hayan empezado, tres años como mucho.

# La vista propia de un estudiante
mine-head = **{ $name }**, esto es tuyo. Solo te mira a ti.
mine-lessons = Esta semana viste: { $titles }.
button-mine-week = Mi semana
button-mine-best = Lo mejor
button-mine-map = Mi mapa
mine-best = **{ $name }**, lo mejor tuyo hasta ahora:
mine-facts = Operaciones: { $right } de { $out_of } bien en una hoja.
mine-rate = Operaciones: { $rate } bien por minuto.
mine-day = Repaso: { $first } de { $out_of } a la primera, el { $day }.
mine-turned = Al principio no salía y ahora sí: { $titles }.
mine-nothing = Aún no hay nada que mirar. Se llena solo.
mine-map-title = **{ $name }**, tu mapa: una marca por lección.
mine-map-guess = Llena: está firme. Media: vuelve hasta que esté firme. Vacía: está por venir. Es una suposición a partir de tus respuestas, y se mueve.
mine-map-unit = { $unit }: { $steady } firmes, { $shaky } vuelven, { $rest } por venir.
mine-chart-steady = firme
mine-chart-shaky = vuelve
mine-chart-not-met = por venir
map-title = **{ $name }**: una marca por lección, unidad por unidad.
map-guess = Una suposición a partir de las respuestas, a día de hoy; se apaga y se mueve.
map-unit = { $unit }: { $steady } firmes, { $shaky } inseguras, { $rest } sin ver.
button-map-picture = Como imagen
command-mine = tu semana, lo mejor tuyo, tu mapa

# Marcas de una página, y quién las anota
marks-head = **{ $name }**, { $day }: { $right } de { $out_of } bien.
marks-entered = Anotado. **{ $name }**, { $day }: { $right } de { $out_of } bien.
marks-missed = { $n }) no está bien
marks-missed-written = { $n }) no está bien: { $written }
marks-in-chat = Contestados en el chat, así que la página no cambia nada ahí: { $numbers }
marks-waiting = Sin marcar todavía: { $numbers }
marks-again = ¿Qué hay escrito? Un botón para cada uno; si quedó en blanco, no hay que hacer nada. ¿Un número mal escrito? Envía la línea otra vez.
marks-none-missed = ¿Un número mal escrito? Envía la línea otra vez.
button-written = { $n }) ¿qué hay?
ask-written = ¿Qué escribió { $name } en el { $n }? Escríbalo tal como está.
button-left-empty = En blanco
command-marks = Las marcas de una página: los números que no están bien, o *ninguno*. Sin números: cómo está.
command-grader = Alguien que corrige páginas en su casa, un abuelo por ejemplo. Ve hojas, soluciones y marcas, nada más. *no* al final termina.
why-marks = Escribe los números que no están bien, o *ninguno*; con el día delante si no es la última página.
why-many-pages = { $most } páginas en un mensaje, por favor.
why-no-page = { $name } no tiene una página del { $date_day } para corregir.
why-no-miss = El ejercicio { $n } de { $name } no está marcado como fallo.
why-not-printed = Todavía no hay hoja de { $name } para el { $date_day }.
line-grader = **{ $name }** puede corregir páginas en { $household }: hojas, soluciones y marcas, nada más. Preparo un enlace.
line-grader-again = Un enlace para otro teléfono de { $name }, que corrige páginas en { $household }.
line-grader-off = { $name } ya no corrige páginas en { $household }; se suelta su teléfono.
note-grader = Quien tenga el enlace ve los nombres de sus hijos y las marcas de sus páginas. Dígaselo a ellos; pueden saber quién mira su trabajo.
invite-grader = Este enlace es para **{ $name }**, que corrige páginas en la familia { $household }, de parte de { $by }. ¿Eres tú?
welcome-grader = Te damos la bienvenida, **{ $name }**. Corriges páginas de { $students }. */key* da respuestas y pasos. Luego envía una página en una línea, solo lo que no está bien: *lun 3 7*, o *lun ninguno*. Con varios niños, el nombre delante.
role-grader = corrige páginas
help-grader = Una página en una línea, solo los números que no están bien: *lun 3 7*, o *lun ninguno*; con varios niños, el nombre delante. */key* da respuestas y pasos, */sheet* la página, */marks* cómo está.
grader-told = { $name }, tu padre o tu madre ha pedido a { $grader } que mire tus páginas en papel. { $grader } ve las hojas y qué ejercicios están bien, nada más.

# Ajustes para un estudiante
adjust-head = Ajustado para **{ $name }**:
adjust-head-none = No hay nada ajustado para **{ $name }**.
adjust-time = Más tiempo: el día trae menos, para que quepa con la mitad más de tiempo; las operaciones nunca se cronometran.
adjust-big = Letra grande en hojas y soluciones.
adjust-fewer = Menos ejercicios: seis en el repaso (o dos tercios del número que puso quien da las clases), tres quintos de una prueba.
adjust-dictated = Las respuestas se pueden decir en voz alta y un adulto las escribe; las operaciones nunca se cronometran.
adjust-calculator = Se puede usar calculadora en todos los ejercicios; las operaciones siguen sin ella.
adjust-untimed = Las operaciones no se cronometran.
adjust-timed = Las operaciones se cronometran.
adjust-note = Solo lo ven los padres y quien da las clases. No es un consejo: qué necesita un niño lo pueden decir quienes lo conocen y tienen formación para ello.
button-adjust-time = Más tiempo
button-adjust-time-off = Tiempo normal
button-adjust-big = Letra grande
button-adjust-big-off = Letra normal
button-adjust-fewer = Menos ejercicios
button-adjust-fewer-off = Los de siempre
button-adjust-dictated = En voz alta
button-adjust-dictated-off = Escritas
button-adjust-calculator = Calculadora
button-adjust-calculator-off = Sin calculadora
line-adjust-time = { $name }: más tiempo. Desde el próximo día el día trae menos, y las operaciones nunca se cronometran.
line-adjust-time-off = { $name }: el tiempo de siempre.
line-adjust-big = { $name }: letra grande en las hojas.
line-adjust-big-off = { $name }: letra normal en las hojas.
line-adjust-fewer = { $name }: menos ejercicios en repaso y pruebas, desde el próximo día.
line-adjust-fewer-off = { $name }: otra vez los ejercicios de siempre.
line-adjust-dictated = { $name }: las respuestas se pueden decir en voz alta y un adulto las escribe.
line-adjust-dictated-off = { $name }: las respuestas se escriben como siempre.
line-adjust-calculator = { $name }: se puede usar calculadora en todos los ejercicios, desde el próximo día.
line-adjust-calculator-off = { $name }: calculadora solo donde la lección la tiene.
line-adjust-untimed = Las operaciones de { $name } no se cronometran.
line-adjust-untimed-off = Las operaciones de { $name } se cronometran desde la próxima hoja.
command-adjust = Lo que está ajustado para un estudiante: *tiempo*, *grande*, *menos*, *dictado*, *calculadora*; con *no* termina.
why-adjust = Una de estas palabras, por favor: *tiempo*, *grande*, *menos*, *dictado*, *calculadora*; con *no* detrás para terminar.
sheet-intro-dictated = En cualquier orden. Las respuestas se pueden decir en voz alta y un adulto las escribe; el número de delante es el que se envía con la respuesta, como en **3) 1/2**.
holds-adjust = un ajuste (*/adjust* lo muestra), { $key_days }

# Pages that wait
waiting-head = Páginas en papel que esperan:
waiting-page = **{ $name }**, { $day }: { $what }
waiting-items = { $count ->
    [one] un ejercicio por marcar
   *[other] { $count } ejercicios por marcar
  }
waiting-photos = { $count ->
    [one] una foto
   *[other] { $count } fotos
  }
waiting-more = Y { $count } más.
waiting-how = Una página se marca en una línea: el nombre, el día, los números que no están bien, o *ninguno*.
waiting-none = Ninguna página espera a que la marques.
button-waiting-marks = Marcar: { $name }, { $day }
button-waiting-photos = Fotos: { $name }, { $day }
button-pages-waiting = Páginas que esperan ({ $count })
